package org.runbend.optimizer.cutting.patterns;

import java.util.List;

/**
 * Lists the patterns of a kind of stock that are worth enough at each of several sets of prices, depth-first, cut off by
 * the tables of all of them.
 */
final class PatternListing {
    private final CutUnits units;
    private final List<PatternTable> tables;
    private final long nodeLimit;

    /** Filled tables, all for the same counts; the search stops after so many nodes. */
    PatternListing(CutUnits units, List<PatternTable> tables, long nodeLimit) {
        this.units = units;
        this.tables = List.copyOf(tables);
        this.nodeLimit = nodeLimit;
    }

    /**
     * Calls {@code found} for each pattern, but the empty one, worth at least {@code least} in each table; with {@code
     * full} only for those that have no room for another cut of those counted. False when it was cut short: by the node
     * limit, or because {@code found} wanted no more.
     */
    boolean list(int kind, long[] least, boolean full, Taker found) {
        return new Walk(kind, least, full, found).run();
    }

    /** Takes a pattern; false when no more are wanted. */
    @FunctionalInterface
    interface Taker {
        boolean take(Pattern pattern);
    }

    private final class Walk {
        private final int kind;
        private final long[] least;
        private final boolean full;
        private final Taker found;
        private final int[] amounts;
        private final long[] rest;
        private final long[][] values;
        private final int[] most;
        private long nodes;
        private boolean complete = true;

        Walk(int kind, long[] least, boolean full, Taker found) {
            this.kind = kind;
            this.least = least;
            this.full = full;
            this.found = found;
            int m = units.sizeCount();
            amounts = new int[m];
            rest = new long[m + 1];
            most = new int[m];
            values = new long[least.length][m + 1];
            for (int i = m - 1; i >= 0; i--) {
                most[i] = tables.get(0).most(i);
                rest[i] = rest[i + 1] + most[i] * units.size(i);
            }
        }

        boolean run() {
            go(0, 0, units.capacity(kind), Long.MAX_VALUE);
            return complete;
        }

        /**
         * {@code values[t][depth]} is what the pattern is worth so far; {@code open} is the shortest size of which another
         * cut was counted and not taken: a full pattern leaves less.
         */
        private void go(int i, int depth, long left, long open) {
            if (++nodes > nodeLimit) {
                complete = false;
            }
            if (!complete || (full && left - rest[i] >= open) || !promises(i, depth, left)) {
                return;
            }
            if (i == most.length) {
                Pattern pattern = Pattern.of(kind, amounts);
                complete = pattern.isEmpty() || found.take(pattern);
                return;
            }
            for (int n = (int) Math.min(most[i], left / units.size(i)); n >= 0 && complete; n--) {
                amounts[i] = n;
                for (int t = 0; t < least.length; t++) {
                    values[t][depth + 1] = values[t][depth] + n * tables.get(t).value(i);
                }
                long newOpen = n < most[i] ? Math.min(open, units.size(i)) : open;
                go(i + 1, depth + 1, left - n * units.size(i), newOpen);
            }
            amounts[i] = 0;
        }

        private boolean promises(int i, int depth, long left) {
            for (int t = 0; t < least.length; t++) {
                if (values[t][depth] + tables.get(t).above(i, left) < least[t]) {
                    return false;
                }
            }
            return true;
        }
    }
}
