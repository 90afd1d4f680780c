package org.runbend.optimizer.mip;

/** Asks for an end when the thread that made it is interrupted, or when another watch asks for it. */
public final class ThreadWatch implements Watch {
    private final Thread worker = Thread.currentThread();
    private final Watch other;

    /** For the calling thread, beside another watch. */
    public ThreadWatch(Watch other) {
        this.other = other;
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
