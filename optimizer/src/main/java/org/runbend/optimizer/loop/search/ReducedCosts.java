package org.runbend.optimizer.loop.search;

import java.util.Arrays;

/**
 * Reduced costs of all node states and the bound they imply, in whole parts of a turn, for loops that leave out so many
 * price units.
 *
 * <p>For any multipliers a loop has turns >= bound + the reduced costs of its node states, and no reduced cost is
 * negative; so both are proofs whatever the accuracy of the linear program that the multipliers came from.
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

    /**
     * Shifts the costs so that each node's least is 0.
     *
     * @param units price units left out
     * @param constant sum of multipliers times right sides, the unit row's included
     * @param unitPrice multiplier of the unit row: what the bound gains with one unit more
     * @param costs by 16 x step + legs; {@link #BARRED} where impossible; taken over
     */
    ReducedCosts(int units, long constant, long unitPrice, long[] costs) {
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

    private ReducedCosts(int units, long bound, long[] reduced, long unitPrice) {
        this.units = units;
        this.bound = bound;
        this.reduced = reduced;
        this.unitPrice = unitPrice;
    }

    /**
     * What is left for a window when the rest of a loop stays as it is.
     *
     * @param steps the steps of the window, in its own order
     * @param legs legs of the loop by step
     * @param windowUnits units that the window leaves out
     */
    ReducedCosts within(int[] steps, int[] legs, int windowUnits) {
        boolean[] inside = new boolean[legs.length];
        long[] costs = new long[16 * steps.length];
        for (int t = 0; t < steps.length; t++) {
            inside[steps[t]] = true;
            System.arraycopy(reduced, 16 * steps[t], costs, 16 * t, 16);
        }
        long spent = bound;
        for (int t = 0; t < legs.length; t++) {
            if (!inside[t]) {
                spent += reduced(t, legs[t]) - (Frontier.isCorner(legs[t]) ? SCALE : 0);
            }
        }
        return new ReducedCosts(windowUnits, spent, costs, 0);
    }

    /** The same for other steps, given by what they are in this order. */
    ReducedCosts inOrder(int[] steps) {
        long[] costs = new long[reduced.length];
        for (int t = 0; t < steps.length; t++) {
            System.arraycopy(reduced, 16 * steps[t], costs, 16 * t, 16);
        }
        return new ReducedCosts(units, bound, costs, unitPrice);
    }

    int units() {
        return units;
    }

    /** What is left of a number of turns above the bound; may be negative. */
    long slack(int turns) {
        return turns * SCALE - bound;
    }

    /** Least turns of a loop with these units; turns are even. */
    int turnBound() {
        long half = Math.floorDiv(bound + 2 * SCALE - 1, 2 * SCALE);
        return (int) Math.max(4, 2 * half);
    }

    /** A bound, in parts, on turns + price x units of loops with so many units or more; none, 0, if it falls. */
    long objectiveFrom(int laterUnits, long price) {
        long perUnit = unitPrice + price * SCALE;
        return perUnit < 0 ? 0 : bound + price * SCALE * units + perUnit * (laterUnits - units);
    }

    long reduced(int step, int legs) {
        return reduced[16 * step + legs];
    }
}
