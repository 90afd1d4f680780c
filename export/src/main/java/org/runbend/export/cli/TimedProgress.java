package org.runbend.export.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.runbend.optimizer.work.Progress;

/**
 * Tells a person at a terminal what the planner is at, since when, and about how long it will be where steps are counted
 * ("3 of 14"). Nothing else reads the clock.
 */
final class TimedProgress implements Progress {
    private static final double NANOS = 1e9;

    private final PrintWriter to;
    private final LongSupplier clock;
    private final long start;
    private int countedOf;
    private int countedFrom;
    private long countingSince;

    TimedProgress(PrintWriter to, LongSupplier clock) {
        this.to = to;
        this.clock = clock;
        start = clock.getAsLong();
    }

    @Override
    public synchronized void step(Step step) {
        long now = clock.getAsLong();
        String count = step.isCounted() ? step.at() + " of " + step.of() + ", " : "";
        to.println("... " + time(now - start) + "  " + count + Terminal.plain(step.what()) + left(step, now));
        to.flush();
    }

    /** As many steps as are to come take about as long as those before. */
    private String left(Step step, long now) {
        if (step.of() != countedOf || step.at() <= countedFrom) {
            countedOf = step.of();
            countedFrom = step.at();
            countingSince = now;
            return "";
        }
        double each = (double) (now - countingSince) / (step.at() - countedFrom);
        return ", about " + time((long) (each * (step.of() - step.at() + 1))) + " to go";
    }

    /** Seconds, or minutes and seconds. */
    private static String time(long nanos) {
        long seconds = Math.round(nanos / NANOS);
        return seconds < 60 ? seconds + " s" : String.format(Locale.ROOT, "%d min %02d s", seconds / 60, seconds % 60);
    }
}
