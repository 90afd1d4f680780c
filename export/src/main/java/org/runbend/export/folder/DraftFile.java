package org.runbend.export.folder;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A text file that a person goes on with, sealed as it was written; only while nobody has changed it is it replaced. */
public final class DraftFile {
    private static final String WORDS = "as written by runbend outline: ";

    private final Path file;
    private final Seal seal;

    /** A draft that is sealed in a comment of its format, which begins and ends so. */
    public DraftFile(Path file, String open, String close) {
        this.file = file;
        this.seal = new Seal(open + WORDS, close);
    }

    /** Where it lies. */
    public Path path() {
        return file;
    }

    /** Its name, without the folder. */
    public String name() {
        return String.valueOf(file.getFileName());
    }

    /** Refuses a file of others, and one that was changed since, unless it is to be replaced all the same. */
    public void check(boolean replace) {
        if (!Disk.isTaken(file)) {
            return;
        }
        if (!Files.isRegularFile(file)) {
            throw new OutputRefused(file + ": exists and is no file; name another with --out");
        }
        if (!replace && !seal.isWhole(file)) {
            throw new OutputRefused(
                    file + ": exists and is not as Runbend wrote it; name another with --out, or say --replace");
        }
    }

    /** The bytes of a text with its seal. */
    public byte[] sealed(String text) {
        return seal.sealed(text.getBytes(StandardCharsets.UTF_8));
    }
}
