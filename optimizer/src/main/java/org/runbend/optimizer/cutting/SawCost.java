package org.runbend.optimizer.cutting;

/**
 * What the work of the saw costs.
 *
 * @param cut a cut, minor units
 * @param stop setting the stop to another length, minor units
 */
public record SawCost(double cut, double stop) {
    /** Work that costs nothing. */
    public static final SawCost NONE = new SawCost(0, 0);

    /** Checks that nothing is negative. */
    public SawCost {
        Require.that(cut >= 0 && stop >= 0, "a cut (%s) and a stop (%s) must not cost less than nothing", cut, stop);
    }

    /** What so many cuts and stops cost, minor units, rounded up. */
    public long of(int cuts, int stops) {
        return (long) Math.ceil(cuts * cut + stops * stop - 1e-9);
    }
}
