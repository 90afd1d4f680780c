package org.runbend.export.folder;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.runbend.catalog.source.Sha256;

/**
 * The last line of a file of ours: a comment with the SHA-256 of all before. While that is right nobody has changed the
 * file, and it is ours to replace.
 *
 * @param open how a comment begins in that kind of file, and the words that tell who wrote it
 * @param close how a comment ends
 * @param tail what must stay the end of the file, behind the seal
 */
record Seal(String open, String close, String tail) {
    /** A seal that is the very end of a file. */
    Seal(String open, String close) {
        this(open, close, "");
    }

    /** Whatever a command of ours writes is far shorter; a longer file is none of ours. */
    private static final long LONGEST = 100_000_000;

    /** The bytes with their seal. */
    byte[] sealed(byte[] bytes) {
        ByteArrayOutputStream all = new ByteArrayOutputStream(bytes.length + 100);
        byte[] end = tail.getBytes(StandardCharsets.US_ASCII);
        byte[] head = Arrays.copyOf(bytes, bytes.length - end.length);
        if (!Arrays.equals(end, Arrays.copyOfRange(bytes, head.length, bytes.length))) {
            throw new IllegalArgumentException("the file does not end in " + tail);
        }
        all.writeBytes(head);
        all.writeBytes(line(head));
        all.writeBytes(end);
        return all.toByteArray();
    }

    /** Whether a file is as it was written; no link to a device and nothing endless is read. */
    boolean isWhole(Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > LONGEST) {
                return false;
            }
            String all = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
            int at = all.lastIndexOf(open);
            byte[] bytes = all.substring(0, Math.max(0, at)).getBytes(StandardCharsets.ISO_8859_1);
            return at >= 0 && all.substring(at).equals(new String(line(bytes), StandardCharsets.ISO_8859_1) + tail);
        } catch (IOException e) {
            return false;
        }
    }

    private byte[] line(byte[] bytes) {
        return (open + Sha256.of(List.of(bytes)) + close + "\n").getBytes(StandardCharsets.US_ASCII);
    }
}
