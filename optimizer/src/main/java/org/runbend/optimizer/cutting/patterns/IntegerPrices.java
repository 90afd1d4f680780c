package org.runbend.optimizer.cutting.patterns;

import java.util.Arrays;

/**
 * A lower bound from whole-number prices of the cuts. With prices y, best pattern value K_j of stock kind j, r_j = c_j -
 * K_j and between l_j and h_j pieces of the kind, no plan costs less than sum d_i y_i + sum h_j min(0, r_j) + sum l_j
 * max(0, r_j); all in integers scaled by a power of two, so whatever prices a floating-point program proposes, the bound
 * holds. Where no kind need be used, prices divided by the greatest K_j / c_j give another one (Farley 1990,
 * https://doi.org/10.1287/opre.38.5.922). All sums are checked 64-bit arithmetic.
 */
final class IntegerPrices {
    /** Prices are whole numbers up to this: derived, sums of 2^22 of them stay within a long. */
    private static final long ROOM = 1L << 40;

    private final MergedCuts cuts;
    private final long scale;
    private final long[] values;
    private final long[] noneAbove;

    /** Prices of the cuts in cost units, rounded down to the scale; {@code table} is filled with them. */
    IntegerPrices(MergedCuts cuts, double[] prices, ResidualProblem residual, PatternTable table) {
        this.cuts = cuts;
        scale = scale(cuts);
        values = new long[prices.length];
        double highest = Arrays.stream(prices).max().orElse(0) * scale;
        double fitting = highest > ROOM ? ROOM / highest : 1;
        for (int i = 0; i < prices.length; i++) {
            long scaled = (long) Math.floor(prices[i] * scale * fitting);
            values[i] = residual.count(i) > 0 ? Math.max(0, Math.min(ROOM, scaled)) : 0;
        }
        noneAbove = new long[cuts.kinds().size()];
        table.fill(values, residual.counts());
    }

    private static long scale(MergedCuts cuts) {
        long dearest =
                cuts.kinds().stream().mapToLong(MergedCuts.Kind::cost).max().orElse(0);
        return dearest == 0 ? 1 : Math.max(1, Long.highestOneBit(ROOM / dearest));
    }

    long[] values() {
        return values;
    }

    /** A cost in the scale of the values. */
    long scaled(long cost) {
        return Math.multiplyExact(cost, scale);
    }

    /** What a kind of stock costs, in the scale of the values. */
    long scaledCost(int kind) {
        return scaled(cuts.kinds().get(kind).cost());
    }

    /** Notes a proved limit of what a pattern of the kind is worth. */
    void noteNoneAbove(int kind, long value) {
        noneAbove[kind] = value;
    }

    /** The bound in the scale of the values. */
    long scaledBound(ResidualProblem residual) {
        long bound = earned(residual);
        for (int k = 0; k < noneAbove.length; k++) {
            long surplus = Math.subtractExact(scaledCost(k), noneAbove[k]);
            long times = surplus < 0 ? residual.most(k) : residual.least(k);
            bound = Math.addExact(bound, Math.multiplyExact(times, surplus));
        }
        return bound;
    }

    private long earned(ResidualProblem residual) {
        long earned = 0;
        for (int i = 0; i < values.length; i++) {
            earned = Math.addExact(earned, Math.multiplyExact((long) residual.count(i), values[i]));
        }
        return earned;
    }

    /**
     * True when the cuts are worth more than all stock allowed can be: then there is no plan at all. Needs the limits of
     * all kinds noted.
     */
    boolean isImpossible(ResidualProblem residual) {
        long room = 0;
        for (int k = 0; k < noneAbove.length; k++) {
            room = Math.addExact(room, Math.multiplyExact(Math.max(0, residual.most(k)), noneAbove[k]));
        }
        return earned(residual) > room;
    }

    /** No plan for the residual costs less. */
    long bound(ResidualProblem residual) {
        long plain = -Math.floorDiv(-scaledBound(residual), scale);
        return Math.max(0, Math.max(plain, farley(residual)));
    }

    /** The bound with its fraction, as a hint which prices are better. */
    double fineBound(ResidualProblem residual) {
        double plain = (double) scaledBound(residual) / scale;
        double earned = (double) earned(residual) / scale;
        return Math.max(plain, earned * shrink());
    }

    private long farley(ResidualProblem residual) {
        long earned = earned(residual);
        long least = Long.MAX_VALUE;
        for (int k = 0; k < noneAbove.length; k++) {
            if (residual.most(k) > 0) {
                least = Math.min(least, quotient(earned, cuts.kinds().get(k).cost(), noneAbove[k]));
            }
        }
        return least == Long.MAX_VALUE ? 0 : least;
    }

    /** earned x cost / value rounded up, or less where the product would not fit: both are then halved towards less. */
    private static long quotient(long earned, long cost, long value) {
        if (value <= 0) {
            return Long.MAX_VALUE;
        }
        long product = earned;
        long divisor = value;
        while (cost > 0 && product > Long.MAX_VALUE / cost) {
            product /= 2;
            divisor = divisor / 2 + 1;
        }
        return -Math.floorDiv(-product * cost, divisor);
    }

    /** By what all prices can be multiplied so that no pattern is worth more than its stock; at most 1. */
    double shrink() {
        double shrink = 1;
        for (int k = 0; k < noneAbove.length; k++) {
            shrink = Math.min(shrink, (double) scaledCost(k) / Math.max(1, noneAbove[k]));
        }
        return shrink;
    }

    /** The least value that a pattern of the kind must have to be part of a plan of at most {@code cost}. */
    long leastValueWithin(ResidualProblem residual, int kind, long cost) {
        long slack = Math.subtractExact(scaled(cost), scaledBound(residual));
        long surplus = Math.subtractExact(scaledCost(kind), noneAbove[kind]);
        boolean counted = surplus < 0 || residual.least(kind) > 0;
        return scaledCost(kind) - slack - (counted ? surplus : 0);
    }
}
