package org.runbend.catalog.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A file as it was read: its name, its bytes and, if it is a text file, its text. Immutable. */
public final class SourceFile {
    /** Largest file that is read, bytes. A job has a few kilobytes. */
    static final int LIMIT = 2_000_000;

    private final Path path;
    private final byte[] bytes;
    private final String text;
    private final Optional<Path> within;

    private SourceFile(Path path, byte[] bytes, String text, Optional<Path> within) {
        this.path = path;
        this.bytes = bytes;
        this.text = text;
        this.within = within;
    }

    /**
     * Reads a file of UTF-8 text, with or without a byte-order mark.
     *
     * @throws BadInput if there is no such file, or it is a folder, empty, too large or not UTF-8 text
     */
    public static SourceFile read(Path path) {
        return text(path, bytesOf(path, path, LIMIT), Optional.empty());
    }

    /**
     * A text that somebody sent, taken as if it were a file at a place. The files that it names must lie in a folder, links
     * resolved.
     *
     * @param path where it would lie, in the folder
     * @param bytes UTF-8 text
     * @param folder the folder, its real path
     * @throws BadInput if it is empty, too large or not UTF-8 text
     */
    public static SourceFile sent(Path path, byte[] bytes, Path folder) {
        return text(path, checked(path, bytes, LIMIT), Optional.of(folder));
    }

    private static SourceFile text(Path path, byte[] bytes, Optional<Path> within) {
        String text = decode(path, bytes);
        if (text.indexOf('\0') >= 0) {
            throw bad(path, "holds NUL characters, a text file is wanted");
        }
        return new SourceFile(path, bytes, text.startsWith("\uFEFF") ? text.substring(1) : text, within);
    }

    /**
     * Reads a file that is for others to understand; its text is empty.
     *
     * @param limit largest file that is read, bytes
     * @throws BadInput if there is no such file, or it is a folder, empty or too large
     */
    public static SourceFile bytesOnly(Path path, int limit) {
        return new SourceFile(path, bytesOf(path, path, limit), "", Optional.empty());
    }

    /** Reads another text that this file names; it may name others from the same folder only, if this one may. Errors as with {@link #read}. */
    public SourceFile named(Path other) {
        return text(other, bytesOf(other, allowed(other), LIMIT), within);
    }

    /** As {@link #named}, for others to understand. Errors as with {@link #bytesOnly}. */
    public SourceFile namedBytes(Path other, int limit) {
        return new SourceFile(other, bytesOf(other, allowed(other), limit), "", within);
    }

    /** The real path of a file that may be read; nothing outside the folder is even asked for. */
    private Path allowed(Path other) {
        if (within.isEmpty()) {
            return other;
        }
        if (!other.toAbsolutePath().normalize().startsWith(within.get())) {
            throw outside(other);
        }
        Path real;
        try {
            real = other.toRealPath();
        } catch (IOException e) {
            throw bad(other, "no such file");
        }
        if (!real.startsWith(within.get())) {
            throw outside(other);
        }
        return real;
    }

    private static BadInput outside(Path path) {
        return bad(path, "lies outside the folder of the page, a file in it is wanted");
    }

    /** A text that was made where others are read from a file. */
    public static SourceFile made(String name, String text) {
        return new SourceFile(Path.of(name), text.getBytes(StandardCharsets.UTF_8), text, Optional.empty());
    }

    /** SHA-256 of the bytes of the files one after the other, hexadecimal. */
    public static String fingerprint(List<SourceFile> files) {
        return Sha256.of(files.stream().map(f -> f.bytes).toList());
    }

    private static byte[] bytesOf(Path path, Path real, int limit) {
        if (!Files.exists(real)) {
            throw bad(path, "no such file");
        }
        if (Files.isDirectory(real)) {
            throw bad(path, "is a folder, a file is wanted");
        }
        if (!Files.isRegularFile(real)) {
            throw bad(path, "is not a regular file");
        }
        try (InputStream in = Files.newInputStream(real)) {
            return checked(path, in.readNBytes(limit + 1), limit);
        } catch (IOException e) {
            throw bad(path, "cannot be read");
        }
    }

    private static byte[] checked(Path path, byte[] bytes, int limit) {
        if (bytes.length == 0) {
            throw bad(path, "is empty");
        }
        if (bytes.length > limit) {
            throw bad(path, "is larger than " + limit / 1_000_000 + " MB");
        }
        return bytes;
    }

    private static String decode(Path path, byte[] bytes) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            boolean wide = bytes.length > 1 && (bytes[0] & 0xFF) + (bytes[1] & 0xFF) == 0xFE + 0xFF;
            throw bad(path, wide ? "is UTF-16 text, save it as UTF-8" : "is not UTF-8 text");
        }
    }

    private static BadInput bad(Path path, String message) {
        return new BadInput(Fault.ofFile(path.toString(), message));
    }

    /** The file's path as it was given. */
    public Path path() {
        return path;
    }

    /** The path as faults name it. */
    public String name() {
        return path.toString();
    }

    /** A copy of the bytes. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** The text, without byte-order mark; empty if the file is none. */
    public String text() {
        return text;
    }
}
