package org.runbend.optimizer.cutting;

import java.util.Comparator;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * Depth-first search over the patterns of one capacity, sizes in falling order of value per length, cut off by the
 * fractional filling of what is left. Values are whole numbers; the fractional bound is rounded up.
 */
final class PatternSearch {
    private final MergedCuts cuts;
    private final long[] values;
    private final int[] order;
    private final long nodeLimit;
    private long nodes;

    PatternSearch(MergedCuts cuts, long[] values, long nodeLimit) {
        this.cuts = cuts;
        this.values = values;
        this.nodeLimit = nodeLimit;
        order = IntStream.range(0, values.length)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -((double) values[i] / cuts.size(i)))
                        .thenComparingInt(i -> i))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** A most valuable pattern and a number no pattern's value is above (its value, unless the limit ended the search). */
    static final class Best {
        private final long[] amounts;
        private final long value;
        private final long noneAbove;

        Best(long[] amounts, long value, long noneAbove) {
            this.amounts = amounts;
            this.value = value;
            this.noneAbove = noneAbove;
        }

        long[] amounts() {
            return amounts;
        }

        long value() {
            return value;
        }

        long noneAbove() {
            return noneAbove;
        }
    }

    /** The most valuable pattern of a capacity. */
    Best best(long capacity) {
        nodes = 0;
        Incumbent incumbent = new Incumbent(new long[values.length]);
        long root = above(0, 0, capacity);
        boolean complete = walk(0, new long[values.length], 0, capacity, incumbent);
        return new Best(incumbent.amounts, incumbent.value, complete ? incumbent.value : root);
    }

    private static final class Incumbent {
        private long[] amounts;
        private long value;

        Incumbent(long[] amounts) {
            this.amounts = amounts;
        }
    }

    private boolean walk(int depth, long[] amounts, long value, long left, Incumbent best) {
        if (++nodes > nodeLimit) {
            return false;
        }
        if (value > best.value) {
            best.value = value;
            best.amounts = amounts.clone();
        }
        if (depth == order.length || above(depth, value, left) <= best.value) {
            return true;
        }
        int i = order[depth];
        boolean complete = true;
        for (long n = most(i, left); n >= 0 && complete; n--) {
            amounts[i] = n;
            complete = walk(depth + 1, amounts, value + n * values[i], left - n * cuts.size(i), best);
        }
        amounts[i] = 0;
        return complete;
    }

    /** Calls {@code found} for every pattern but the empty one that is worth at least {@code least}; false at the limit. */
    boolean all(long capacity, long least, Consumer<long[]> found) {
        nodes = 0;
        return list(0, new long[values.length], 0, capacity, least, found);
    }

    private boolean list(int depth, long[] amounts, long value, long left, long least, Consumer<long[]> found) {
        if (++nodes > nodeLimit) {
            return false;
        }
        if (depth == order.length) {
            if (value >= least && IntStream.range(0, amounts.length).anyMatch(i -> amounts[i] > 0)) {
                found.accept(amounts.clone());
            }
            return true;
        }
        if (above(depth, value, left) < least) {
            return true;
        }
        int i = order[depth];
        boolean complete = true;
        for (long n = most(i, left); n >= 0 && complete; n--) {
            amounts[i] = n;
            complete = list(depth + 1, amounts, value + n * values[i], left - n * cuts.size(i), least, found);
        }
        amounts[i] = 0;
        return complete;
    }

    private long most(int i, long left) {
        return left < 0 ? 0 : Math.min(cuts.count(i), left / cuts.size(i));
    }

    private long above(int depth, long value, long left) {
        if (depth == order.length || left <= 0) {
            return value;
        }
        int i = order[depth];
        double share = (double) values[i] / cuts.size(i);
        return value + (long) Math.ceil(left * share * (1 + 1e-12)) + 1;
    }
}
