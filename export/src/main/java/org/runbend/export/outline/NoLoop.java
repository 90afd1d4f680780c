package org.runbend.export.outline;

/** A layer that no loop can be taken from. The message is one line: what was found, what would help. */
public final class NoLoop extends RuntimeException {
    NoLoop(String message) {
        super(message);
    }
}
