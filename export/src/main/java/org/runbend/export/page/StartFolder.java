package org.runbend.export.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlTree;
import org.runbend.export.folder.Disk;

/** The folder that the page was started in: its job files and catalogs, and nothing outside it. */
final class StartFolder {
    private static final int DEEPEST = 2;
    private static final int MOST = 200;
    private static final String CATALOG = "workshop.yaml";

    private final Path folder;

    /**
     * A folder.
     *
     * @throws IOException if there is none
     */
    StartFolder(Path folder) throws IOException {
        this.folder = folder.toRealPath();
    }

    Path path() {
        return folder;
    }

    /** A text without the folder's own path in it. */
    String shortened(String text) {
        return text.replace(folder + folder.getFileSystem().getSeparator(), "");
    }

    /** A text as if it were a file of the folder; it may name files of the folder alone. */
    SourceFile sent(String name, String text) {
        return SourceFile.sent(place(name), text.getBytes(StandardCharsets.UTF_8), folder);
    }

    /** Where a file of a name would lie; only plain names of yaml files below the folder. */
    Path place(String name) {
        Path place;
        try {
            place = folder.resolve(name).normalize();
        } catch (InvalidPathException e) {
            throw new Refused(400, "a file cannot be named so");
        }
        boolean plain = name.matches(
                "(?:[\\p{L}\\p{N}_ ()+,-][\\p{L}\\p{N}_. ()+,-]*/){0,2}[\\p{L}\\p{N}_ ()+,-][\\p{L}\\p{N}_. ()+,-]*\\.ya?ml");
        if (!plain || !place.startsWith(folder)) {
            throw new Refused(
                    400, "a job file is named by letters and digits and ends in .yaml, in the folder of the page");
        }
        return place;
    }

    /** The text of a job file, links resolved only within the folder. */
    String open(String name) {
        try {
            SourceFile file = SourceFile.sent(folder.resolve("x.yaml"), new byte[] {'x'}, folder)
                    .named(place(name));
            return file.text();
        } catch (BadInput e) {
            throw new Refused(404, shortened(e.getMessage()));
        }
    }

    /**
     * Saves a job file.
     *
     * @param name its name
     * @param text its text
     * @param known the text that was there when it was opened or saved last; empty if the name was free
     */
    void save(String name, String text, String known) {
        Path place = place(name);
        try {
            if (Disk.isTaken(place)) {
                if (!place.toRealPath().startsWith(folder) || !Files.isRegularFile(place)) {
                    throw new Refused(400, name + " is no file of this folder");
                }
                if (!open(name).equals(known) && !open(name).equals(text)) {
                    throw new Refused(409, name + " was changed meanwhile by somebody else; save under another name");
                }
            } else {
                Path parent = place.getParent();
                if (!Files.isDirectory(parent, LinkOption.NOFOLLOW_LINKS)) {
                    throw new Refused(400, "there is no such folder");
                }
            }
            Disk.replace(place, text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new Refused(507, name + " cannot be written: is the disk full, or the folder not yours?");
        }
    }

    /** Job files and catalogs in and below the folder, by their names. */
    Map<String, Object> listing() {
        List<Object> jobs = new ArrayList<>();
        List<Object> catalogs = new ArrayList<>();
        for (Path path : files()) {
            Optional<Map<String, Object>> tree = tree(path);
            String name = folder.relativize(path).toString().replace('\\', '/');
            if (tree.filter(t -> t.containsKey("pipes") && t.containsKey("plates"))
                    .isPresent()) {
                catalogs.add(name);
            } else if (tree.filter(t -> t.containsKey("floor") || t.containsKey("extends") || t.containsKey("job"))
                    .isPresent()) {
                jobs.add(Map.of("name", name, "title", String.valueOf(tree.get().getOrDefault("job", name))));
            }
        }
        return Map.of("jobs", jobs, "catalogs", catalogs);
    }

    private List<Path> files() {
        try (Stream<Path> all =
                Files.find(folder, DEEPEST, (p, a) -> a.isRegularFile() && a.size() > 0 && a.size() < 1_000_000)) {
            return all.filter(p -> p.toString().matches(".*\\.ya?ml"))
                    .sorted()
                    .limit(MOST)
                    .toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of(); // a folder below that nobody may read hides the others; they can be typed
        }
    }

    private static Optional<Map<String, Object>> tree(Path path) {
        try {
            return Optional.of(YamlTree.of(SourceFile.read(path)));
        } catch (BadInput e) {
            return Optional.empty();
        }
    }

    /** Lays the demo workshop's catalog into the folder, where none lies under its name. */
    String addDemoCatalog() {
        Path place = folder.resolve(CATALOG);
        try {
            if (!Disk.isTaken(place)) {
                Disk.write(place, StartFolder.class.getResourceAsStream(CATALOG).readAllBytes());
            }
            return CATALOG;
        } catch (IOException e) {
            throw new Refused(507, CATALOG + " cannot be written: is the disk full, or the folder not yours?");
        }
    }
}
