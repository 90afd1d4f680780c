package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A lower bound from integer prices of the cuts. With prices y, best pattern value K_j of stock kind j, r_j = c_j - K_j
 * and at most h_j pieces of the kind, no plan costs less than sum d_i y_i + sum h_j min(0, r_j); all in integers scaled by
 * a power of two, so whatever prices a floating-point program proposes, the bound holds (Farley 1990, with stock limits).
 */
final class PatternDuals {
    private static final long ROOM = 1L << 40;

    private final MergedCuts cuts;
    private final long[] prices;
    private final long scale;
    private final List<PatternSearch.Best> best = new ArrayList<>();
    private final long nodeLimit;
    private long scaledBound;

    PatternDuals(MergedCuts cuts, double[] duals, long nodeLimit) {
        this.cuts = cuts;
        this.nodeLimit = nodeLimit;
        scale = scale(cuts);
        prices = new long[cuts.sizeCount()];
        for (int i = 0; i < prices.length; i++) {
            prices[i] = (long) Math.max(0, Math.min(ROOM, Math.floor(duals[i] * scale)));
        }
        PatternSearch search = new PatternSearch(cuts, prices, nodeLimit);
        for (int i = 0; i < prices.length; i++) {
            scaledBound = Math.addExact(scaledBound, Math.multiplyExact(cuts.count(i), prices[i]));
        }
        for (int k = 0; k < cuts.kinds().size(); k++) {
            best.add(search.best(cuts.kinds().get(k).capacity()));
            scaledBound = Math.subtractExact(scaledBound, Math.multiplyExact(atMost(k), excess(k)));
        }
    }

    private static long scale(MergedCuts cuts) {
        long dearest =
                cuts.kinds().stream().mapToLong(MergedCuts.Kind::cost).max().orElse(0);
        return dearest == 0 ? 1 : Long.highestOneBit(ROOM / dearest);
    }

    private long atMost(int kind) {
        return Math.min(cuts.kinds().get(kind).available(), cuts.totalCount());
    }

    private long excess(int kind) {
        return Math.max(0, best.get(kind).noneAbove() - scaledCost(kind));
    }

    private long scaledCost(int kind) {
        return cuts.kinds().get(kind).cost() * scale;
    }

    /** No plan costs less than this. */
    long bound() {
        return Math.max(0, -Math.floorDiv(-scaledBound, scale));
    }

    /** For each kind its most valuable pattern with the amount by which it earns more than its cost. */
    List<PatternSearch.Best> best() {
        return List.copyOf(best);
    }

    /**
     * All patterns that a plan of at most {@code cost} can use: each pattern's own shortfall must fit between the bound
     * and the cost. Empty when there are more than {@code limit}.
     */
    Optional<List<MergedCuts.Pattern>> within(long cost, int limit) {
        long slack = Math.subtractExact(Math.multiplyExact(cost, scale), scaledBound);
        List<MergedCuts.Pattern> patterns = new ArrayList<>();
        PatternSearch search = new PatternSearch(cuts, prices, nodeLimit);
        for (int k = 0; k < cuts.kinds().size(); k++) {
            int kind = k;
            long least = scaledCost(k) + excess(k) - slack;
            boolean complete = search.all(cuts.kinds().get(k).capacity(), least, a -> {
                if (patterns.size() <= limit) {
                    patterns.add(new MergedCuts.Pattern(kind, a));
                }
            });
            if (!complete || patterns.size() > limit) {
                return Optional.empty();
            }
        }
        return Optional.of(patterns);
    }
}
