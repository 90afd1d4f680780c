package org.runbend.optimizer.loop.search;

/**
 * Lossless passes over one block, from one end or from both. How the slack is shared is learned from the numbers of
 * states of earlier passes: it is aimed at equal numbers on both sides, taking it that they grow so much with each turn.
 */
final class Passes {
    /**
     * Growth of the number of states with a turn of slack; about what was seen; the command was not written down, so
     * it counts as chosen.
     */
    private static final double GROWTH = 2.2;
    /** Kept states of a pass back; a few hundred MB; chosen, not measured. */
    private static final long MOST_KEPT = 6_000_000;

    private final BidirectionalSweep sweep;
    private final int mostPerLayer;
    private double early;
    private double late;
    private boolean truncated;
    private long total;

    /** Passes in the order of the frontier; the prelude says how many states a pass makes on either side. */
    Passes(Frontier frontier, PriceUnits prices, int mostPerLayer, Prelude prelude) {
        this.sweep = new BidirectionalSweep(frontier, prices);
        this.mostPerLayer = mostPerLayer;
        learnEarly(prelude.early(), prelude.slack());
        learnLate(prelude.late(), prelude.slack());
    }

    private void learnEarly(long states, long slack) {
        early = logarithm(states) - turns(slack);
    }

    private void learnLate(long states, long slack) {
        late = logarithm(states) - turns(slack);
    }

    private static double logarithm(long states) {
        return StrictMath.log((double) Math.max(1, states)) / StrictMath.log(GROWTH);
    }

    private static double turns(long slack) {
        return (double) slack / ReducedCosts.SCALE;
    }

    /**
     * Legs by step of a loop for the units of the reduced costs whose shape costs at most so much, the cheapest if not {@link #truncated};
     * empty if there is none or if truncated.
     */
    int[] ask(ReducedCosts reducedCosts, long target, long mostInAll) {
        total = 0;
        long slack = reducedCosts.slack(target);
        long back = (long) (ReducedCosts.SCALE * Math.min(0.75 * turns(slack), (turns(slack) + early - late) / 2));
        if (back > 0) {
            run(reducedCosts, target, back, mostInAll);
            if (!sweep.truncated()) {
                return sweep.found();
            }
        }
        if (back <= 0 || sweep.lateTruncated()) {
            run(reducedCosts, target, 0, mostInAll);
        }
        return sweep.found();
    }

    private void run(ReducedCosts reducedCosts, long target, long back, long mostInAll) {
        sweep.run(reducedCosts, target, back, mostPerLayer, MOST_KEPT, mostInAll - total);
        total += sweep.early() + sweep.late();
        truncated = sweep.truncated();
        if (back > 0) {
            learnLate(sweep.lateTruncated() ? 4 * sweep.late() : sweep.late(), back);
        }
        if (!sweep.lateTruncated()) {
            learnEarly(sweep.early(), reducedCosts.slack(target) - Math.max(0, back));
        }
    }

    boolean truncated() {
        return truncated;
    }

    long total() {
        return total;
    }
}
