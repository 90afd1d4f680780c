package org.runbend.export.page;

import java.time.Duration;
import java.util.function.LongSupplier;

/** Knows how long nobody has asked for anything. */
final class IdleClock {
    private final LongSupplier nanos;
    private long last;

    IdleClock(LongSupplier nanos) {
        this.nanos = nanos;
        last = nanos.getAsLong();
    }

    synchronized void touch() {
        last = nanos.getAsLong();
    }

    synchronized boolean isOver(Duration most) {
        return nanos.getAsLong() - last > most.toNanos();
    }
}
