package org.runbend.export.folder;

/** The output folder cannot be written or is not ours. The message is one line. */
public final class OutputRefused extends RuntimeException {
    /** A refusal, told to a person in one line. */
    public OutputRefused(String message) {
        super(message);
    }
}
