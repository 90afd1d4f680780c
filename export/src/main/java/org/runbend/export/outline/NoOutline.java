package org.runbend.export.outline;

/** A drawing that no floor can be taken from. The message is one line: what was found, what would help. */
public final class NoOutline extends RuntimeException {
    NoOutline(String message) {
        super(message);
    }
}
