package org.runbend.export.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A single file that a command writes, known as ours by its ending alone. */
final class OutputFile {
    private final Path path;
    private final String ending;

    /** A file with an ending such as .pdf. */
    OutputFile(Path path, String ending) {
        this.path = path;
        this.ending = ending;
    }

    /**
     * Refuses what may be somebody else's.
     *
     * @throws OutputRefused if something is there that is no file with the ending
     */
    void check() {
        if (Disk.isTaken(path) && (!path.toString().endsWith(ending) || !Files.isRegularFile(path))) {
            throw new OutputRefused(path + ": exists and is no " + ending + " file; name a new file");
        }
    }

    /**
     * Writes it, all or nothing.
     *
     * @throws OutputRefused if it cannot be written
     */
    void write(byte[] bytes) {
        try {
            Disk.replace(path, bytes);
        } catch (IOException e) {
            throw new OutputRefused(path + ": cannot be written");
        }
    }
}
