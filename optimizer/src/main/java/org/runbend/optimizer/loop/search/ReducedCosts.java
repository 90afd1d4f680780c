package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import org.runbend.optimizer.lattice.StraightCost;

/**
 * Reduced costs of all node states and the bound they imply, in whole parts of a turn, for loops that leave out so many
 * price units.
 *
 * <p>For any multipliers the shape of a loop costs at least the bound + the reduced costs of its node states and of the ends of its straight pieces,
 * and none of these is negative; so both are proofs whatever the accuracy of the linear program that the multipliers came from.
 *
 * <p>Source: Lagrangian bounds, Fisher, Management Science 27(1), 1981; from memory.
 */
final class ReducedCosts {
    /** Parts of a turn; chosen, not measured; the bound holds at any scale, for prices are rounded towards it. */
    static final long SCALE = 1_000_000;
    /** Reduced cost of a state that a node cannot have; derived: sums of a few of them stay within a long. */
    static final long BARRED = Long.MAX_VALUE / 4;

    private final int units;
    private final long bound;
    private final long unitPrice;
    private final long[] reduced;
    private final long[] pieces;
    private final long[] leftOut;
    private final int turnCost;
    private final StraightCost straightCost;

    /**
     * Shifts the costs so that each node's least is 0.
     *
     * @param units price units left out
     * @param constant sum of multipliers times right sides, the unit row's included
     * @param unitPrice multiplier of the unit row: what the bound gains with one unit more
     * @param costs by 16 x step + legs; {@link #BARRED} where impossible; taken over
     * @param pieces what is left of the cost of an end of a straight piece, by link as {@link StraightPieces#end}; taken over
     * @param leftOut what a node left out costs by step, in parts, where that is part of the shape; else 0; taken over
     * @param frontier of the steps
     */
    ReducedCosts(
            int units, long constant, long unitPrice, long[] costs, long[] pieces, long[] leftOut, Frontier frontier) {
        this.leftOut = leftOut;
        this.pieces = pieces;
        this.turnCost = frontier.turnCost();
        this.straightCost = frontier.straightCost();
        this.units = units;
        this.unitPrice = unitPrice;
        this.reduced = costs;
        long sum = constant;
        for (int at = 0; at < costs.length; at += 16) {
            long least = Arrays.stream(costs, at, at + 16).min().orElseThrow();
            for (int legs = 0; legs < 16; legs++) {
                costs[at + legs] = costs[at + legs] == BARRED ? BARRED : costs[at + legs] - least;
            }
            sum += least;
        }
        this.bound = sum;
    }

    private ReducedCosts(
            ReducedCosts other, int units, long bound, long[] reduced, long[] pieces, long[] leftOut, long unitPrice) {
        this.leftOut = leftOut;
        this.units = units;
        this.bound = bound;
        this.reduced = reduced;
        this.unitPrice = unitPrice;
        this.pieces = pieces;
        this.turnCost = other.turnCost;
        this.straightCost = other.straightCost;
    }

    /**
     * What is left for a window when the rest of a loop stays as it is.
     *
     * @param steps the steps of the window, in its own order
     * @param legs legs of the loop by step
     * @param windowUnits units that the window leaves out
     * @param outside links at which straight pieces end, no node of the link in the window; as {@link StraightPieces#end}
     */
    ReducedCosts within(int[] steps, int[] legs, int windowUnits, int[] outside) {
        boolean[] inside = new boolean[legs.length];
        long[] costs = new long[16 * steps.length];
        for (int t = 0; t < steps.length; t++) {
            inside[steps[t]] = true;
            System.arraycopy(reduced, 16 * steps[t], costs, 16 * t, 16);
        }
        long spent = bound;
        for (int at : outside) {
            spent += pieces[at] - straightCost.end() * unit();
        }
        for (int t = 0; t < legs.length; t++) {
            if (!inside[t]) {
                spent += reduced(t, legs[t]) - (Frontier.isCorner(legs[t]) ? SCALE : legs[t] == 0 ? leftOut[t] : 0);
            }
        }
        return new ReducedCosts(this, windowUnits, spent, costs, pieces(steps), leftOut(steps), 0);
    }

    /** The same for other steps, given by what they are in this order. */
    ReducedCosts inOrder(int[] steps) {
        long[] costs = new long[reduced.length];
        for (int t = 0; t < steps.length; t++) {
            System.arraycopy(reduced, 16 * steps[t], costs, 16 * t, 16);
        }
        return new ReducedCosts(this, units, bound, costs, pieces(steps), leftOut(steps), unitPrice);
    }

    private long[] leftOut(int[] steps) {
        return Arrays.stream(steps).mapToLong(t -> leftOut[t]).toArray();
    }

    private long[] pieces(int[] steps) {
        long[] moved = new long[2 * steps.length];
        for (int t = 0; t < steps.length && pieces.length > 0; t++) {
            System.arraycopy(pieces, 2 * steps[t], moved, 2 * t, 2);
        }
        return moved;
    }

    /** Parts of a unit of cost. */
    private long unit() {
        return SCALE / turnCost;
    }

    int units() {
        return units;
    }

    /** What is left of the cost of a shape above the bound; may be negative. */
    long slack(long shape) {
        return shape * unit() - bound;
    }

    /** Least cost of the shape of a loop with these units. */
    long shapeBound() {
        return attainable(-Math.floorDiv(-bound, unit()));
    }

    /**
     * The least cost that a shape can have which is not below another: turns are even, four at least; so are the ends of
     * straight pieces, and their extras are left aside.
     */
    long attainable(long least) {
        long pair = 2L * turnCost;
        boolean inside = Arrays.stream(leftOut).anyMatch(p -> p > 0);
        if (inside) {
            return Math.max(2 * pair, least);
        }
        long piece = straightCost.extra().isEmpty() ? 2L * straightCost.end() : 0;
        if (piece == 0) {
            return straightCost.isNone() ? Math.max(2, -Math.floorDiv(-least, pair)) * pair : Math.max(2 * pair, least);
        }
        long best = Long.MAX_VALUE;
        for (long pieces = 0; 2 * pair + piece * pieces < best; pieces++) {
            long pairs = Math.max(2, -Math.floorDiv(-(least - piece * pieces), pair));
            best = Math.min(best, pairs * pair + piece * pieces);
        }
        return best;
    }

    /** The bound itself is compared, where two of them round to the same. */
    boolean isBelow(ReducedCosts other) {
        return shapeBound() < other.shapeBound();
    }

    /** A bound on the shape's cost + price x units of loops with so many units or more; none, 0, if it falls. */
    long objectiveFrom(int laterUnits, long price) {
        long perUnit = unitPrice + price * unit();
        long parts = perUnit < 0 ? 0 : bound + price * unit() * units + perUnit * (laterUnits - units);
        return -Math.floorDiv(-parts, unit());
    }

    /** Of the ends of straight pieces that a step has seen. */
    long reduced(StraightPieces seen) {
        long sum = 0;
        for (int i = 0; i < seen.ends(); i++) {
            sum += seen.end(i) < 0 ? 0 : pieces[seen.end(i)];
        }
        return sum;
    }

    long reduced(int step, int legs) {
        return reduced[16 * step + legs];
    }
}
