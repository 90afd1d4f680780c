package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The bounded knapsack of pattern pricing in whole numbers: which pattern of a kind of stock is worth most.
 *
 * <p>Row i of the table holds, for every capacity, the most that sizes i and after it can be worth. Where capacities are
 * too long for a table of every unit, it counts in coarser ones, sizes rounded down: its figures are then bounds from
 * above, and a depth-first search below them finds the true best. The table is filled anew for each set of values; its
 * arrays are kept.
 */
final class PatternTable {
    /** Cells up to which the table is exact: chosen for memory, not measured. */
    private static final long EXACT_CELLS = 3_000_000;
    /** Cells of a coarse table: chosen for time, not measured. */
    private static final long COARSE_CELLS = 500_000;

    private final CutUnits units;
    private final long nodeLimit;
    private final long coarse;
    private final int[] steps;
    private final long[][] own;
    private final long[][] rows;
    private long[] values = {};
    private int[] most = {};

    /** A table whose searches stop after so many nodes. */
    PatternTable(CutUnits units, long nodeLimit) {
        this.units = units;
        this.nodeLimit = nodeLimit;
        int m = units.sizeCount();
        long cells = units.greatestCapacity() * m;
        coarse = cells <= EXACT_CELLS ? 1 : -Math.floorDiv(-cells, COARSE_CELLS);
        steps = new int[m];
        for (int i = 0; i < m; i++) {
            steps[i] = (int) Math.min(units.size(i) / coarse, Integer.MAX_VALUE);
        }
        int width = Math.toIntExact(units.greatestCapacity() / coarse) + 1;
        own = new long[m][width];
        rows = new long[m + 1][];
        rows[m] = new long[width];
    }

    /** After how many nodes a search stops. */
    long nodeLimit() {
        return nodeLimit;
    }

    /** A pattern with its value. */
    record Found(Pattern pattern, long value) {}

    /** Fills the table for these values, each 0 or more, and at most {@code counts} cuts of each size. */
    void fill(long[] newValues, int[] counts) {
        values = newValues.clone();
        most = new int[counts.length];
        for (int i = counts.length - 1; i >= 0; i--) {
            most[i] = (int) Math.min(counts[i], units.greatestCapacity() / units.size(i));
            rows[i] = rows[i + 1];
            if (values[i] > 0 && most[i] > 0) {
                fillRow(i);
            }
        }
    }

    private void fillRow(int i) {
        long[] below = rows[i + 1];
        long[] row = own[i];
        rows[i] = row;
        int width = row.length;
        int step = steps[i];
        if (step == 0) {
            for (int c = 0; c < width; c++) {
                row[c] = below[c] + most[i] * values[i];
            }
            return;
        }
        if ((long) step * most[i] + step >= width) {
            System.arraycopy(below, 0, row, 0, Math.min(step, width));
            for (int c = step; c < width; c++) {
                row[c] = Math.max(below[c], row[c - step] + values[i]);
            }
            return;
        }
        addOnce(below, row, step, values[i]);
        int left = most[i] - 1;
        for (int pack = 1; left > 0; pack *= 2) {
            int taken = Math.min(pack, left);
            left -= taken;
            for (int c = width - 1; c >= step * taken; c--) {
                row[c] = Math.max(row[c], row[c - step * taken] + taken * values[i]);
            }
        }
    }

    private static void addOnce(long[] below, long[] row, int step, long value) {
        System.arraycopy(below, 0, row, 0, Math.min(step, row.length));
        for (int c = step; c < row.length; c++) {
            row[c] = Math.max(below[c], below[c - step] + value);
        }
    }

    /** No pattern of sizes i and after it is worth more in this capacity. */
    long above(int i, long capacity) {
        return rows[i][(int) (capacity / coarse)];
    }

    /** No pattern of the kind is worth more than this. */
    long noneAbove(int kind) {
        return above(0, units.capacity(kind));
    }

    /** What a cut of size i is worth. */
    long value(int i) {
        return values[i];
    }

    /** Most cuts of size i in a pattern. */
    int most(int i) {
        return most[i];
    }

    /** True when the table itself says what the best pattern is worth. */
    boolean isExact() {
        return coarse == 1;
    }

    /**
     * Good patterns of a kind worth more than {@code least}, best first, at most {@code limit}: of each longest size the
     * best one. The first is the best of all unless the node limit ended the search.
     */
    Best best(int kind, long least, int limit) {
        long capacity = units.capacity(kind);
        List<Integer> starts = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            if (startsAbove(i, capacity) > least) {
                starts.add(i);
            }
        }
        starts.sort(Comparator.comparingLong((Integer i) -> -startsAbove(i, capacity))
                .thenComparingInt(i -> i));
        List<Found> found = new ArrayList<>();
        Walk walk = new Walk(kind, least);
        long noneAbove = isExact() ? noneAbove(kind) : least;
        for (int n = 0; n < starts.size(); n++) {
            int start = starts.get(n);
            if (found.size() < limit) {
                walk.floor = least;
            }
            if (startsAbove(start, capacity) > walk.floor) {
                Found best = walk.bestFrom(start, capacity);
                if (best != null) {
                    found.add(best);
                    walk.best = Math.max(walk.best, best.value());
                }
            }
            walk.floor = Math.max(walk.floor, walk.best);
        }
        found.sort(Comparator.comparingLong(f -> -f.value()));
        if (!isExact()) {
            noneAbove = walk.nodes > nodeLimit ? noneAbove(kind) : Math.max(least, walk.best);
        }
        return new Best(found.size() > limit ? found.subList(0, limit) : found, noneAbove);
    }

    /** Patterns found, best first, and a number that no pattern of the kind is worth more than. */
    record Best(List<Found> found, long noneAbove) {}

    /** No pattern with size i as its longest is worth more. */
    private long startsAbove(int i, long capacity) {
        long best = Long.MIN_VALUE;
        for (int n = 1; values[i] > 0 && n <= most[i] && n * units.size(i) <= capacity; n++) {
            best = Math.max(best, n * values[i] + above(i + 1, capacity - n * units.size(i)));
        }
        return best;
    }

    /** Depth-first through the sizes, cut off by the table. */
    private final class Walk {
        private final int kind;
        private final int[] amounts = new int[values.length];
        private long floor;
        private long best;
        private long nodes;
        private Found found;

        Walk(int kind, long floor) {
            this.kind = kind;
            this.floor = floor;
        }

        Found bestFrom(int start, long capacity) {
            found = null;
            take(start, 0, capacity);
            return found;
        }

        private void take(int i, long value, long left) {
            for (int n = (int) Math.min(most[i], left / units.size(i)); n >= 1; n--) {
                amounts[i] = n;
                go(i + 1, value + n * values[i], left - n * units.size(i));
            }
            amounts[i] = 0;
        }

        private void go(int from, long value, long left) {
            if (++nodes > nodeLimit) {
                return;
            }
            if (value > floor) {
                floor = value;
                found = new Found(Pattern.of(kind, amounts), value);
            }
            for (int i = from; i < values.length && value + above(i, left) > floor; i++) {
                if (values[i] > 0 && units.size(i) <= left && rows[i] != rows[i + 1]) {
                    take(i, value, left);
                }
            }
        }
    }
}
