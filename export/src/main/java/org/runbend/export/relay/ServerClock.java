package org.runbend.export.relay;

import java.time.Duration;
import java.time.Instant;
import java.util.function.Supplier;

/**
 * The time of a server, asked now and then and carried on by this machine's count of nanoseconds: what its clock on the wall says
 * has no part in it.
 */
final class ServerClock {
    private static final long FRESH = Duration.ofSeconds(30).toNanos();

    private final Supplier<Instant> server;
    private Instant told;
    private long at;

    ServerClock(Supplier<Instant> server) {
        this.server = server;
    }

    /** The server's time. */
    synchronized Instant now() {
        long count = System.nanoTime();
        if (told == null || count - at > FRESH) {
            told = server.get();
            at = count;
        }
        return told.plusNanos(count - at);
    }
}
