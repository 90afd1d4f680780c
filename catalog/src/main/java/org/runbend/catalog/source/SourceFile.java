package org.runbend.catalog.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** A file as it was read: its name, its bytes and, if it is a text file, its text. Immutable. */
public final class SourceFile {
    /** Largest file that is read, bytes. A job has a few kilobytes. */
    static final int LIMIT = 2_000_000;

    private final Path path;
    private final byte[] bytes;
    private final String text;

    private SourceFile(Path path, byte[] bytes, String text) {
        this.path = path;
        this.bytes = bytes;
        this.text = text;
    }

    /**
     * Reads a file of UTF-8 text, with or without a byte-order mark.
     *
     * @throws BadInput if there is no such file, or it is a folder, empty, too large or not UTF-8 text
     */
    public static SourceFile read(Path path) {
        byte[] bytes = bytesOf(path, LIMIT);
        String text = decode(path, bytes);
        if (text.indexOf('\0') >= 0) {
            throw bad(path, "holds NUL characters, a text file is wanted");
        }
        return new SourceFile(path, bytes, text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    /**
     * Reads a file that is for others to understand; its text is empty.
     *
     * @param limit largest file that is read, bytes
     * @throws BadInput if there is no such file, or it is a folder, empty or too large
     */
    public static SourceFile bytesOnly(Path path, int limit) {
        return new SourceFile(path, bytesOf(path, limit), "");
    }

    /** A text that was made where others are read from a file. */
    public static SourceFile made(String name, String text) {
        return new SourceFile(Path.of(name), text.getBytes(StandardCharsets.UTF_8), text);
    }

    /** SHA-256 of the bytes of the files one after the other, hexadecimal. */
    public static String fingerprint(List<SourceFile> files) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            files.forEach(f -> digest.update(f.bytes));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static byte[] bytesOf(Path path, int limit) {
        if (!Files.exists(path)) {
            throw bad(path, "no such file");
        }
        if (Files.isDirectory(path)) {
            throw bad(path, "is a folder, a file is wanted");
        }
        if (!Files.isRegularFile(path)) {
            throw bad(path, "is not a regular file");
        }
        try (InputStream in = Files.newInputStream(path)) {
            byte[] bytes = in.readNBytes(limit + 1);
            if (bytes.length == 0) {
                throw bad(path, "is empty");
            }
            if (bytes.length > limit) {
                throw bad(path, "is larger than " + limit / 1_000_000 + " MB");
            }
            return bytes;
        } catch (IOException e) {
            throw bad(path, "cannot be read");
        }
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
