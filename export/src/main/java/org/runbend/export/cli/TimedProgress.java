package org.runbend.export.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.runbend.optimizer.laying.Progress;

/**
 * Tells a person at a terminal what the planner is at, since when, and about how long it will be where steps are counted
 * ("alternative 3 of 14"). Nothing else reads the clock.
 */
final class TimedProgress implements Progress {
    private static final Pattern COUNTED = Pattern.compile("(\\D*?)(\\d+) of (\\d+)\\b.*");
    private static final double NANOS = 1e9;

    private final PrintWriter to;
    private final LongSupplier clock;
    private final long start;
    private String counting = "";
    private int countedFrom;
    private long countingSince;

    TimedProgress(PrintWriter to, LongSupplier clock) {
        this.to = to;
        this.clock = clock;
        start = clock.getAsLong();
    }

    @Override
    public synchronized void step(String what) {
        long now = clock.getAsLong();
        to.println("... " + time(now - start) + "  " + Terminal.plain(what) + left(what, now));
        to.flush();
    }

    /** As many steps as are to come take about as long as those before. */
    private String left(String what, long now) {
        Matcher m = COUNTED.matcher(what);
        if (!m.matches()) {
            return "";
        }
        int at = Integer.parseInt(m.group(2));
        int all = Integer.parseInt(m.group(3));
        if (!m.group(1).equals(counting) || at <= countedFrom) {
            counting = m.group(1);
            countedFrom = at;
            countingSince = now;
            return "";
        }
        double each = (double) (now - countingSince) / (at - countedFrom);
        return ", about " + time((long) (each * (all - at + 1))) + " to go";
    }

    /** Seconds, or minutes and seconds. */
    private static String time(long nanos) {
        long seconds = Math.round(nanos / NANOS);
        return seconds < 60 ? seconds + " s" : String.format(Locale.ROOT, "%d min %02d s", seconds / 60, seconds % 60);
    }
}
