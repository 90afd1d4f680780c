package org.runbend.export.folder;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Small kits whose files all hold one word, and folders as somebody sees them. */
public final class TrialKit {
    private TrialKit() {}

    /** A kit of the files named, and its kit.json; each holds the word. */
    public static Map<String, byte[]> files(String word, String... names) {
        Map<String, byte[]> files = new TreeMap<>();
        for (String name : names) {
            files.put(name, (word + " " + name).getBytes(UTF_8));
        }
        List<String> all = Stream.concat(files.keySet().stream(), Stream.of("kit.json"))
                .map(n -> '"' + n + '"')
                .toList();
        String json = "{\"job\": \"%s\", \"loops\": [{\"files\": [1]}], \"fingerprint\": \"00\", \"files\": %s}";
        files.put("kit.json", json.formatted(word, all).getBytes(UTF_8));
        return files;
    }

    /** Every file under a folder by its name, with its text; links are followed, as a viewer does. */
    static Map<String, String> seen(Path folder) throws IOException {
        Map<String, String> seen = new TreeMap<>();
        if (!Files.isDirectory(folder)) {
            return seen;
        }
        try (Stream<Path> all = Files.walk(folder, FileVisitOption.FOLLOW_LINKS)) {
            for (Path p : all.filter(Files::isRegularFile).toList()) {
                seen.put(folder.relativize(p).toString(), Files.readString(p));
            }
        }
        return seen;
    }

    /** Copies a tree as it is, links as links: what a disk would hold if everything stopped now. */
    static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path p : all.toList()) {
                Files.copy(p, to.resolve(from.relativize(p)), LinkOption.NOFOLLOW_LINKS);
            }
        }
    }
}
