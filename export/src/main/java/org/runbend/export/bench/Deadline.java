package org.runbend.export.bench;

import org.runbend.optimizer.cutting.Watch;

/** A clock that asks a solver for an end after so many seconds. */
final class Deadline implements Watch {
    private static final double NANOS = 1e9;

    private final long start = System.nanoTime();
    private final double seconds;
    private long first = Long.MAX_VALUE;

    Deadline(double seconds) {
        this.seconds = seconds;
    }

    @Override
    public boolean asksForEnd() {
        return taken() > seconds;
    }

    @Override
    public void learned(long cost, long bound) {
        first = first == Long.MAX_VALUE ? cost : first;
    }

    /** What the first plan cost that was heard of. */
    long first() {
        return first;
    }

    /** Seconds since the clock was made. */
    double taken() {
        return (System.nanoTime() - start) / NANOS;
    }
}
