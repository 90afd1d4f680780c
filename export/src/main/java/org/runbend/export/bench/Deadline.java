package org.runbend.export.bench;

import org.runbend.optimizer.cutting.Watch;

/** A clock that asks a solver for an end after so many seconds. */
final class Deadline implements Watch {
    private static final double NANOS = 1e9;

    private final long start = System.nanoTime();
    private final double seconds;

    Deadline(double seconds) {
        this.seconds = seconds;
    }

    @Override
    public boolean asksForEnd() {
        return taken() > seconds;
    }

    @Override
    public void learned(long cost, long bound) {
        // only the end counts
    }

    /** Seconds since the clock was made. */
    double taken() {
        return (System.nanoTime() - start) / NANOS;
    }
}
