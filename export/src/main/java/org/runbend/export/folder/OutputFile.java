package org.runbend.export.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A single file that a command writes, known as ours by its ending and its seal. */
public final class OutputFile {
    private static final String WORDS = "as written by runbend: ";

    private final Path path;
    private final String ending;
    private final Seal seal;

    private OutputFile(Path path, String ending, Seal seal) {
        this.path = path;
        this.ending = ending;
        this.seal = seal;
    }

    /** A paper. */
    public static OutputFile pdf(Path path) {
        return new OutputFile(path, ".pdf", new Seal("% " + WORDS, ""));
    }

    /** A drawing; the comment stands before the line that ends the file, where every reader skips it. */
    public static OutputFile dxf(Path path) {
        return new OutputFile(path, ".dxf", new Seal("999\n" + WORDS, "", "0\nEOF\n"));
    }

    /** A picture. */
    public static OutputFile svg(Path path) {
        return new OutputFile(path, ".svg", new Seal("<!-- " + WORDS, " -->"));
    }

    /** Where it lies. */
    public Path path() {
        return path;
    }

    /**
     * Refuses what is somebody else's, and what somebody has changed.
     *
     * @param replace whether a file with the ending is replaced all the same
     * @throws OutputRefused if something is there that is not to be replaced
     */
    public void check(boolean replace) {
        if (!Disk.isTaken(path)) {
            return;
        }
        if (!path.toString().endsWith(ending) || !Files.isRegularFile(path)) {
            throw new OutputRefused(path + ": exists and is no " + ending + " file; name a new file");
        }
        if (!replace && !seal.isWhole(path)) {
            throw new OutputRefused(
                    path + ": exists and is not as Runbend wrote it; name another file, or say --replace");
        }
    }

    /**
     * Writes it, all or nothing.
     *
     * @throws OutputRefused if it cannot be written
     */
    public void write(byte[] bytes) {
        try {
            Disk.replace(path, seal.sealed(bytes));
        } catch (IOException e) {
            throw new OutputRefused(path + ": cannot be written");
        }
    }
}
