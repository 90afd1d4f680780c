package org.runbend.export.page;

import java.time.Duration;

/**
 * What the server bears.
 *
 * @param heap megabytes that the process of a plan may use
 * @param time how long a plan may take
 * @param slots how many plans are made at once
 * @param queue how many more may wait
 * @param kept how many plans that are done are kept to be taken away
 * @param idle after how long without a request the server ends
 * @param ahead whether a process for the next plan stands ready
 */
public record Limits(int heap, Duration time, int slots, int queue, int kept, Duration idle, boolean ahead) {
    /** Largest body of a request, bytes: a job file is at most half of it. */
    static final int MOST_BODY = 4_000_000;

    /** Largest drawing, bytes. */
    static final int MOST_DRAWING = 30_000_000;

    /** So many requests are answered at once; more wait in the system's own queue. */
    static final int MOST_AT_ONCE = 1200;

    /** How long a request may take to come in, s. */
    static final int SLOWEST_REQUEST = 15;

    /** Checks that each is over 0. */
    public Limits {
        if (heap <= 0 || slots <= 0 || queue <= 0 || kept <= 0 || time.isNegative() || idle.isNegative()) {
            throw new IllegalArgumentException("limits are over 0");
        }
    }

    /** The usual ones. 2 GB are enough for the widest floors with alternatives, as measured for the command line. */
    public static Limits usual() {
        return new Limits(2048, Duration.ofMinutes(15), 2, 16, 24, Duration.ofHours(1), true);
    }

    /** The same with another time without a request. */
    public Limits withIdle(Duration other) {
        return new Limits(heap, time, slots, queue, kept, other, ahead);
    }

    /** The same with another time for a plan. */
    public Limits withTime(Duration other) {
        return new Limits(heap, other, slots, queue, kept, idle, ahead);
    }

    /** The same without a process that stands ready. */
    public Limits withoutAhead() {
        return new Limits(heap, time, slots, queue, kept, idle, false);
    }
}
