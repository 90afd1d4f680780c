package org.runbend.export.folder;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.runbend.export.data.BoardFiles;

/** Reads which files of a folder are ours: those that its {@code kit.json} lists. */
final class KitListing {
    /** A listing of ours is far shorter. */
    private static final long LARGEST = 20_000_000;

    private static final int LONGEST = 100;
    /**
     * All names that Runbend gives: in the folder itself or in its one sub-folder; else no separators, no drives of any
     * system, no letters that a locale may not have.
     */
    private static final Pattern PLAIN = Pattern.compile("(" + BoardFiles.FOLDER + "/)?(?!\\.)[A-Za-z0-9._ -]+");

    private KitListing() {}

    /** Plain names listed in the folder's kit.json; empty if there is none of ours. A link is none of ours. */
    static Set<String> of(Path folder) {
        Path kit = folder.resolve(KitFiles.KIT);
        if (!Disk.isFile(kit)) {
            return Set.of();
        }
        try {
            return Files.size(kit) > LARGEST ? Set.of() : read(kit);
        } catch (IOException e) {
            return Set.of();
        }
    }

    private static Set<String> read(Path kit) throws IOException {
        try (JsonParser json = new JsonFactory().createParser(kit.toFile())) {
            return json.nextToken() == JsonToken.START_OBJECT ? names(json) : Set.of();
        }
    }

    private static Set<String> names(JsonParser json) throws IOException {
        Set<String> names = new TreeSet<>();
        boolean fingerprint = false;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            fingerprint |= key.equals("fingerprint");
            if (key.equals("files") && value == JsonToken.START_ARRAY) {
                while (json.nextToken() == JsonToken.VALUE_STRING) {
                    names.add(json.getText());
                }
            } else {
                json.skipChildren();
            }
        }
        boolean ours =
                fingerprint && names.contains(KitFiles.KIT) && names.stream().allMatch(KitListing::isPlain);
        return ours ? names : Set.of();
    }

    /** A name that leads nowhere else and hides nothing. */
    static boolean isPlain(String name) {
        return name.length() <= LONGEST && PLAIN.matcher(name).matches();
    }
}
