package org.runbend.export.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.runbend.catalog.source.Sha256;
import org.runbend.export.folder.Disk;

/** Work that is not saved yet, on disk, each start folder's apart, for this user alone. */
final class Drafts {
    private static final int KEPT = 40;

    private final Path folder;

    /**
     * Drafts below a folder.
     *
     * @param root where drafts of all start folders lie
     * @param start the start folder they belong to
     */
    Drafts(Path root, Path start) {
        this.folder = root.resolve(name(start));
    }

    private static String name(Path start) {
        return Sha256.of(List.of(Disk.bytes(start))).substring(0, 16);
    }

    /** Keeps a draft; one that cannot be written is said and nothing else is lost. */
    void keep(String id, Map<String, Object> draft) {
        try {
            makeFolder();
            Disk.replace(file(id), Json.write(draft).getBytes(StandardCharsets.UTF_8));
            forgetOldest();
        } catch (IOException e) {
            throw new Refused(507, "the draft cannot be written: is the disk full?");
        }
    }

    private void makeFolder() throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder);
            if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
                Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
            }
        }
    }

    Map<String, Object> open(String id) {
        try {
            return Json.read(Files.readAllBytes(file(id)));
        } catch (IOException e) {
            throw new Refused(404, "there is no such draft");
        }
    }

    void forget(String id) {
        try {
            Files.deleteIfExists(file(id));
        } catch (IOException e) {
            throw new Refused(507, "the draft cannot be removed");
        }
    }

    /** What lies here, the newest first: id, title, name of the job file, and when it was kept, ms since 1970. */
    List<Object> listing() {
        List<Object> all = new ArrayList<>();
        for (Path path : newestFirst()) {
            String id = path.getFileName().toString().replace(".json", "");
            try {
                Map<String, Object> draft = Json.read(Files.readAllBytes(path));
                all.add(Map.of(
                        "id", id,
                        "title", String.valueOf(draft.getOrDefault("title", "")),
                        "name", String.valueOf(draft.getOrDefault("name", "")),
                        "when", Files.getLastModifiedTime(path).toMillis()));
            } catch (IOException | Refused e) {
                all.add(Map.of("id", id, "title", "a draft that cannot be read", "name", "", "when", 0));
            }
        }
        return all;
    }

    private List<Path> newestFirst() {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(p -> p.getFileName().toString().matches("d[a-z0-9]{8,40}\\.json"))
                    .sorted(Comparator.comparing(Drafts::when).reversed().thenComparing(p -> p))
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private static FileTime when(Path path) {
        try {
            return Files.getLastModifiedTime(path);
        } catch (IOException e) {
            return FileTime.fromMillis(0);
        }
    }

    private void forgetOldest() throws IOException {
        List<Path> all = newestFirst();
        for (Path old : all.subList(Math.min(KEPT, all.size()), all.size())) {
            Files.deleteIfExists(old);
        }
    }

    private Path file(String id) {
        if (!id.matches("d[a-z0-9]{8,40}")) {
            throw new Refused(400, "there is no such draft");
        }
        return folder.resolve(id + ".json");
    }
}
