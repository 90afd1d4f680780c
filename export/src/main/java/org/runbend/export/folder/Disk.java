package org.runbend.export.folder;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Writes that reach the disk, and looks at folders. */
public final class Disk {
    private Disk() {}

    /** Writes a new file and waits until the disk has it. */
    public static void write(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            write(channel, bytes);
        }
    }

    static void write(FileChannel channel, byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
        channel.force(true);
    }

    /** Puts a file in the place of an old one in one step; a link to a file is followed. */
    public static void replace(Path file, byte[] bytes) throws IOException {
        replace(Map.of(file, bytes));
    }

    /** As {@link #replace(Path, byte[])} for several files: none gets its name before the disk has taken them all. */
    public static void replace(Map<Path, byte[]> files) throws IOException {
        Map<Path, Path> fresh = new LinkedHashMap<>();
        try {
            for (Map.Entry<Path, byte[]> file : files.entrySet()) {
                Path target = Files.exists(file.getKey())
                        ? file.getKey().toRealPath()
                        : file.getKey().toAbsolutePath();
                Path made = target.resolveSibling(
                        ".runbend-" + ProcessHandle.current().pid() + "-"
                                + target.getFileName().hashCode() + ".tmp");
                Files.deleteIfExists(made);
                fresh.put(made, target);
                write(made, file.getValue());
            }
            for (Map.Entry<Path, Path> file : fresh.entrySet()) {
                Files.move(
                        file.getKey(),
                        file.getValue(),
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            for (Path made : fresh.keySet()) {
                Files.deleteIfExists(made);
            }
        }
    }

    /** Waits until the disk has the names in a folder, where the system offers that. */
    public static void force(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Not all systems open folders; there the names reach the disk when the system likes.
        }
    }

    /** Names in a folder, in order. */
    public static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            Set<String> names = new TreeSet<>();
            list.forEach(p -> names.add(p.getFileName().toString()));
            return names;
        }
    }

    /** As {@link #names}, as the system has them: names that this locale cannot spell too. */
    public static SortedSet<Path> entries(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            SortedSet<Path> entries = new TreeSet<>();
            list.forEach(p -> entries.add(p.getFileName()));
            return entries;
        }
    }

    /** Whether the name is taken, be it by a link that leads nowhere. */
    public static boolean isTaken(Path path) {
        return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    }

    /** Whether it is a folder and no link to one. */
    public static boolean isFolder(Path path) {
        return Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS);
    }

    /** Whether it is a file and no link to one. */
    public static boolean isFile(Path path) {
        return Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS);
    }

    /** The bytes of an absolute path as the system has them, which its text may not show in every locale. */
    public static byte[] bytes(Path path) {
        String raw = path.toAbsolutePath().toUri().getRawPath();
        String bare = raw.length() > 1 && raw.endsWith("/") ? raw.substring(0, raw.length() - 1) : raw;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; i < bare.length(); i++) {
            if (bare.charAt(i) == '%') {
                bytes.write(Integer.parseInt(bare.substring(i + 1, i + 3), 16));
                i += 2;
            } else {
                bytes.write(bare.charAt(i));
            }
        }
        return bytes.toByteArray();
    }

    /** The last name of a path, with escapes for what a locale may not be able to spell; empty for the root. */
    public static String rawName(Path path) {
        String raw = path.toAbsolutePath().toUri().getRawPath().replaceFirst("(?<=.)/$", "");
        return raw.substring(raw.lastIndexOf('/') + 1);
    }

    /** The last name of a path; empty for the root. */
    public static String name(Path path) {
        return path.getFileName() == null ? "" : path.getFileName().toString();
    }
}
