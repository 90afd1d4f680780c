package org.runbend.optimizer.mip;

import java.util.concurrent.CancellationException;

/** Asks for an end when the thread that made it is interrupted, or when another watch asks for it. */
public final class ThreadWatch implements Watch {
    private final Thread worker = Thread.currentThread();
    private final Watch other;

    public ThreadWatch(Watch other) {
        this.other = other;
    }

    /** Goes on, or throws if the thread was interrupted; the flag stays set. */
    public static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("cutting was cancelled");
        }
    }

    @Override
    public boolean asksForEnd() {
        return worker.isInterrupted() || other.asksForEnd();
    }

    @Override
    public void learned(long cost, long bound) {
        other.learned(cost, bound);
    }
}
