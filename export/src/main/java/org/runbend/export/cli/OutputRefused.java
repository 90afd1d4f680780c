package org.runbend.export.cli;

/** The output folder cannot be written or is not ours. The message is one line. */
final class OutputRefused extends RuntimeException {
    OutputRefused(String message) {
        super(message);
    }
}
