package org.runbend.optimizer.day;

import org.runbend.optimizer.mip.Watch;

/**
 * Ends a solver after it has looked so often whether it should end. The looks of the thread that asked are alone counted, as
 * they come at the same places each time; those of helpers come as the machine likes.
 */
final class LookLimit implements Watch {
    private final Thread owner = Thread.currentThread();
    private final long most;
    private long looks;
    private volatile boolean ended;

    LookLimit(long most) {
        this.most = most;
    }

    @Override
    public boolean asksForEnd() {
        if (Thread.currentThread() == owner && ++looks > most) {
            ended = true;
        }
        return ended || owner.isInterrupted();
    }

    @Override
    public void learned(long cost, long bound) {
        // the answer says it
    }
}
