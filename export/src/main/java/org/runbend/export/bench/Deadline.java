package org.runbend.export.bench;

import org.runbend.optimizer.mip.Watch;

/** Asks a solver for an end after so many seconds, or once it has proved its cost: what comes later is not measured. */
final class Deadline implements Watch {
    private static final double NANOS = 1e9;

    private final long start = System.nanoTime();
    private final double seconds;
    private long first = Long.MAX_VALUE;
    /** Looked at by a second thread too. */
    private volatile boolean proved;

    Deadline(double seconds) {
        this.seconds = seconds;
    }

    @Override
    public boolean asksForEnd() {
        return proved || taken() > seconds;
    }

    @Override
    public void learned(long cost, long bound) {
        first = first == Long.MAX_VALUE ? cost : first;
        proved = cost <= bound;
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
