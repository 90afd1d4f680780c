package org.runbend.export.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A text file that a person goes on with. Its last line is a comment with the SHA-256 of all before; while that is right
 * nobody has changed it, and only then is it replaced.
 */
final class DraftFile {
    private static final String WORDS = "as written by runbend outline: ";
    /** A draft is far shorter; a longer file is none. */
    private static final long LONGEST = 20_000_000;

    private final Path file;
    private final String open;
    private final String close;

    DraftFile(Path file, String open, String close) {
        this.file = file;
        this.open = open;
        this.close = close;
    }

    /** Its name, without the folder. */
    String name() {
        return String.valueOf(file.getFileName());
    }

    /** Refuses a file of others, and one that was changed since, unless it is to be replaced all the same. */
    void check(boolean replace) {
        if (!Disk.isTaken(file)) {
            return;
        }
        if (!Files.isRegularFile(file)) {
            throw new OutputRefused(file + ": exists and is no file; name another with --out");
        }
        if (!replace && !isAsWritten()) {
            throw new OutputRefused(
                    file + ": exists and is not as Runbend wrote it; name another with --out, or say --replace");
        }
    }

    /** Writes the text and its seal, all or nothing. */
    void write(String text) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Disk.replace(file, (text + seal(text)).getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new OutputRefused(file + ": cannot be written");
        }
    }

    private boolean isAsWritten() {
        try {
            if (Files.size(file) > LONGEST) {
                return false;
            }
            String all = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
            int at = all.lastIndexOf(open + WORDS);
            return at >= 0 && all.substring(at).equals(seal(all.substring(0, at)));
        } catch (IOException e) {
            return false;
        }
    }

    private String seal(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return open + WORDS + HexFormat.of().formatHex(hash) + close + "\n";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
