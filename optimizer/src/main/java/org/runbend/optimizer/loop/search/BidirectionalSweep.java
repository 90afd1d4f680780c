package org.runbend.optimizer.loop.search;

/**
 * Asks without loss for a loop of exactly so many price units left out and at most so many turns, from both ends of the
 * order at once: half of the slack for a pass from the first node on, half for one from the last node back.
 *
 * <p>Why nothing is lost: of the loops within the target take one of fewest turns. Its reduced costs are within the slack,
 * so there is a last step up to which they are within the first half of it; what comes after the next step is within the
 * other half. Both passes keep such a part or one of as many turns and no greater reduced cost with the same open links
 * (fewer turns would make a loop of fewer turns). So the two are met where the first pass goes beyond its share. The
 * number of states grows exponentially with the slack; two halves are far fewer than the whole.
 *
 * <p>Source: bounded bidirectional dynamic programming, Righini and Salani, Symmetry helps, Discrete Optimization 3(3), 2006;
 * from memory; here the resource that is halved is the slack of the reduced costs.
 */
final class BidirectionalSweep {
    private final TwoSides sides;
    private OneWaySweep first;
    private OneWaySweep second;
    private BidirectionalJoin junction;
    private final boolean pricesPieces;
    private long target;
    private int units;
    private int[] found = {};
    private long early;
    private long late;
    private boolean truncated;
    private boolean lateTruncated;

    /** Passes over the nodes of a frontier, in its order and back. */
    BidirectionalSweep(Frontier frontier, PriceUnits prices) {
        this.sides = new TwoSides(frontier, prices);
        this.pricesPieces = frontier.pricesPieces();
    }

    /**
     * Asks; {@link #found} and {@link #truncated} tell the answer.
     *
     * @param reducedCosts for the order of the frontier
     * @param back how much of the slack the pass back from the last node gets; 0 for no such pass
     * @param mostKept states of the pass back, which are all kept
     */
    void run(ReducedCosts reducedCosts, long target, long back, int mostPerLayer, long mostKept, long mostInAll) {
        this.target = target;
        this.units = reducedCosts.units();
        found = new int[0];
        junction = null;
        early = 0;
        late = 0;
        truncated = false;
        lateTruncated = false;
        long slack = BoundedCost.slack(reducedCosts, target);
        if (slack < 0) {
            return;
        }
        second = sides.second(reducedCosts, target, back);
        first = sides.first(reducedCosts, target, slack - back, back > 0 ? this::join : null);
        if (back > 0) {
            second.run(mostPerLayer, Math.min(mostKept, mostInAll));
        }
        if (second.found().length > 0) {
            found = sides.fromTheFirst(second.found());
            beat(second.foundShape());
        }
        if ((found.length == 0 || pricesPieces) && !second.truncated()) {
            first.run(mostPerLayer, mostInAll - second.total());
            // where pieces have a price, what a half meets after a join beats it
            found = first.found().length > 0 && first.foundShape() <= this.target + 1 ? first.found() : found;
        }
        early = first.total();
        late = second.total();
        lateTruncated = second.truncated();
        truncated = lateTruncated || first.truncated();
        first = null;
        second = null;
        junction = null;
    }

    private boolean join(long[] state, long cost, int step, int legs, int parent) {
        if (junction == null || junction.step() != step) {
            junction = sides.junction(step, first, second, units);
        }
        int other = junction.partner(state, cost, target);
        if (other < 0) {
            return false;
        }
        while (other >= 0) {
            found = sides.joined(first.wayTo(step - 1, legs, parent), step, second, other);
            if (!pricesPieces) {
                return true;
            }
            beat(junction.shape(cost, other));
            other = junction.partner(state, cost, target);
        }
        return false;
    }

    private void beat(long shape) {
        target = Math.min(target, shape - 1);
        first.beat(shape);
    }

    /** Whether a limit came before the end, so that finding nothing proves nothing. */
    boolean truncated() {
        return truncated;
    }

    /** Whether the pass back was too much. */
    boolean lateTruncated() {
        return lateTruncated;
    }

    /** Legs of the loop found, by step; empty if none. */
    int[] found() {
        return found.clone();
    }

    /** States of the pass from the first node on. */
    long early() {
        return early;
    }

    /** States of the pass back. */
    long late() {
        return late;
    }
}
