package org.runbend.export.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The folder that a kit is written to.
 *
 * <p>Everything is written to a temporary folder beside it first. A new folder is then moved into place in one step. In
 * a folder of ours only the files that its {@code kit.json} lists are replaced; other files are never touched.
 */
final class OutputFolder {
    private final Path folder;

    OutputFolder(Path folder) {
        this.folder = folder;
    }

    Path path() {
        return folder;
    }

    /** Refuses a file, a folder that holds files but no kit of ours, and a place that cannot be written. */
    void checkOurs() {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new OutputRefused(folder + ": the output folder is a file; name a folder");
        }
        if (!Files.exists(folder)) {
            Path above = parent();
            if (Files.exists(above) && !Files.isWritable(above)) {
                throw new OutputRefused(folder + ": the folder " + above + " cannot be written");
            }
            return;
        }
        if (!Files.isWritable(folder)) {
            throw new OutputRefused(folder + ": the output folder cannot be written");
        }
        if (!names(folder).isEmpty() && ours().isEmpty()) {
            throw new OutputRefused(
                    folder + ": the output folder holds files but no kit.json of ours; name a new or an empty folder");
        }
    }

    /** Writes the files, all of them or none. */
    void write(Map<String, byte[]> files) {
        checkOurs();
        checkNothingInTheWay(files.keySet());
        try {
            Files.createDirectories(parent());
            Path fresh = Files.createTempDirectory(parent(), ".runbend-");
            try {
                for (Map.Entry<String, byte[]> file : files.entrySet()) {
                    Files.write(fresh.resolve(file.getKey()), file.getValue());
                }
                moveIntoPlace(fresh, files.keySet());
            } finally {
                remove(fresh);
            }
        } catch (AccessDeniedException e) {
            throw new OutputRefused(
                    folder + ": the output folder cannot be written (no permission at " + e.getFile() + ")");
        } catch (FileSystemException e) {
            throw new OutputRefused(folder + ": the output folder cannot be written (" + reason(e) + ")");
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be written (" + e.getMessage() + ")");
        }
    }

    /** A file that has the name of one of ours, but that our last kit does not list, is somebody else's. */
    private void checkNothingInTheWay(Set<String> names) {
        Set<String> old = ours();
        for (String name : names) {
            if (!old.contains(name) && Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
                throw new OutputRefused(folder.resolve(name)
                        + ": this file is not ours and would be overwritten; rename it or name another folder");
            }
        }
    }

    private static String reason(FileSystemException e) {
        return e.getReason() != null ? e.getReason() : e.getClass().getSimpleName();
    }

    private Path parent() {
        Path parent = folder.toAbsolutePath().normalize().getParent();
        return parent != null ? parent : folder.toAbsolutePath();
    }

    private void moveIntoPlace(Path fresh, Set<String> names) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            makeReadable(fresh);
            Files.move(fresh, folder, StandardCopyOption.ATOMIC_MOVE);
            return;
        }
        Set<String> old = ours();
        for (String name : names) {
            Files.move(
                    fresh.resolve(name),
                    folder.resolve(name),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        }
        for (String name : old) {
            if (!names.contains(name)) {
                Files.deleteIfExists(folder.resolve(name));
            }
        }
    }

    /** A temporary folder is private; a kit is as open as any new folder beside it. */
    private static void makeReadable(Path fresh) throws IOException {
        Path probe = fresh.resolve(".probe");
        Files.createDirectory(probe);
        if (fresh.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(fresh, Files.getPosixFilePermissions(probe));
        }
        Files.delete(probe);
    }

    private static void remove(Path fresh) throws IOException {
        if (!Files.exists(fresh)) {
            return;
        }
        for (String name : names(fresh)) {
            Files.deleteIfExists(fresh.resolve(name));
        }
        Files.deleteIfExists(fresh);
    }

    private static Set<String> names(Path folder) {
        try (Stream<Path> list = Files.list(folder)) {
            Set<String> names = new TreeSet<>();
            list.forEach(p -> names.add(p.getFileName().toString()));
            return names;
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be read");
        }
    }

    /** Plain names listed in the folder's kit.json; empty if there is none of ours. */
    private Set<String> ours() {
        Path kit = folder.resolve(KitFiles.KIT);
        if (!Files.isRegularFile(kit)) {
            return Set.of();
        }
        Set<String> names = new HashSet<>();
        boolean fingerprint = false;
        try (JsonParser json = new JsonFactory().createParser(kit.toFile())) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                return Set.of();
            }
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
        } catch (IOException e) {
            return Set.of();
        }
        boolean plain = names.stream()
                .allMatch(n -> !n.isEmpty() && List.of(n.split("[/\\\\]", -1)).size() == 1 && !n.startsWith("."));
        return fingerprint && plain && names.contains(KitFiles.KIT) ? names : Set.of();
    }
}
