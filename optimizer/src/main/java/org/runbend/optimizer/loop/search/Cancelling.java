package org.runbend.optimizer.loop.search;

import java.util.concurrent.CancellationException;

/** Lets long work be stopped from outside: whoever interrupts the thread ends it at the next step. */
final class Cancelling {
    private Cancelling() {}

    /** Goes on, or throws if the thread was interrupted; the flag stays set. */
    static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("laying the loop was cancelled");
        }
    }
}
