package org.runbend.optimizer.bare;

import java.util.Locale;
import org.runbend.catalog.source.Plain;

/**
 * A change of one size of the job, tried on the lattice.
 *
 * @param change what is changed
 * @param subject the keep-out's name for a clearance, otherwise empty
 * @param from size in the job; mm, or turns for a price
 * @param to size tried
 * @param x for a port that moves its new place, mm; otherwise 0
 * @param y likewise
 * @param here places of the bare part that a loop could then pass
 * @param more places that one loop could then pass more than now, on the whole floor; at another spacing so much more floor
 *     in places of now
 * @param area of the additional floor, m2
 * @param turns quarter bends more that the loop then takes, where a loop was found; otherwise 0
 */
public record Remedy(
        Change change,
        String subject,
        double from,
        double to,
        double x,
        double y,
        int here,
        int more,
        double area,
        long turns) {
    /** A change of which it is known what a loop could reach, not what loop. */
    public Remedy(
            Change change,
            String subject,
            double from,
            double to,
            double x,
            double y,
            int here,
            int more,
            double area) {
        this(change, subject, from, to, x, y, here, more, area, 0);
    }

    /** What can be changed. */
    public enum Change {
        /** Centreline to outline. */
        EDGE("layout.edge"),
        /** Distance kept from a keep-out. */
        CLEARANCE("floor.keepOut.clearance"),
        /** How far from the port the loop may begin. */
        REACH("floor.port.reach"),
        /** Where flow and return come through. */
        PORT("floor.port.at"),
        /** Centre to centre of neighbouring runs. */
        SPACING("layout.spacing"),
        /** What leaving a place out costs. */
        PRICE("layout.leftOutPrice");

        private final String key;

        Change(String key) {
            this.key = key;
        }

        /** Path of the key in the job file. */
        public String key() {
            return key;
        }
    }

    /** The change in words, without what it frees. */
    public String words() {
        return switch (change) {
            case EDGE -> "edge " + size(to) + " instead of " + size(from);
            case CLEARANCE -> "clearance " + size(to) + " instead of " + size(from) + " round " + subject;
            case REACH -> "a reach of the port of " + size(to) + " instead of " + size(from);
            case PORT -> "the port at [" + size(x) + ", " + size(y) + "]";
            case SPACING -> "spacing " + size(to) + " instead of " + size(from);
            case PRICE -> "leftOutPrice " + Plain.number(to) + " instead of " + Plain.number(from);
        };
    }

    /** The change and what it frees. */
    public String sentence() {
        if (change == Change.PRICE) {
            return "A loop that serves " + count(here) + " more was found, at " + turns
                    + (turns == 1 ? " quarter bend" : " quarter bends") + " more; with " + words()
                    + " it is the one laid.";
        }
        if (change == Change.SPACING) {
            return String.format(
                    Locale.ROOT, "With %s a loop can reach %.2f m2 more, a part of it here.", words(), area);
        }
        String freed = count(more) + " more";
        if (here > more) {
            freed = here + " of them and " + freed + " than now on the whole floor";
        } else if (here < more) {
            freed += ", " + here + " of them here";
        }
        return "With " + words() + " a loop can reach " + freed + ".";
    }

    private static String count(int places) {
        return places == 1 ? "1 place" : places + " places";
    }

    private static String size(double value) {
        return String.format(Locale.ROOT, "%.1f", value).replaceFirst("\\.0$", "");
    }
}
