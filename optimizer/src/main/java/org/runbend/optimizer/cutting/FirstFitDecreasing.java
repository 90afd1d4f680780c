package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A first plan: longest cut first, into the stock piece in hand that it fills best; a new piece is the cheapest of what is
 * limited and fits, else of the kind preferred; at the end each piece changes to the cheapest kind that still holds it.
 */
final class FirstFitDecreasing {
    private final MergedCuts cuts;

    FirstFitDecreasing(MergedCuts cuts) {
        this.cuts = cuts;
    }

    private static final class Open {
        private int kind;
        private long left;
        private final long[] amounts;

        Open(int kind, long left, int sizes) {
            this.kind = kind;
            this.left = left;
            amounts = new long[sizes];
        }
    }

    /** The cheapest plan over all preferred kinds for the given counts, or empty when none serves every cut. */
    Optional<List<MergedCuts.Pattern>> solve(long[] counts) {
        List<MergedCuts.Pattern> best = null;
        for (int preferred = 0; preferred < cuts.kinds().size(); preferred++) {
            for (boolean shelfFirst : new boolean[] {true, false}) {
                List<MergedCuts.Pattern> plan = plan(counts, preferred, shelfFirst);
                if (plan != null && (best == null || cost(plan) < cost(best))) {
                    best = plan;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private long cost(List<MergedCuts.Pattern> plan) {
        return plan.stream().mapToLong(p -> cuts.kinds().get(p.kind()).cost()).sum();
    }

    private List<MergedCuts.Pattern> plan(long[] counts, int preferred, boolean shelfFirst) {
        long[] free =
                cuts.kinds().stream().mapToLong(MergedCuts.Kind::available).toArray();
        List<Open> opened = new ArrayList<>();
        for (int size = 0; size < counts.length; size++) {
            for (long n = 0; n < counts[size]; n++) {
                Open open = bestFit(opened, cuts.size(size));
                if (open == null) {
                    int kind = newKind(free, cuts.size(size), preferred, shelfFirst);
                    if (kind < 0) {
                        return null;
                    }
                    free[kind]--;
                    open = new Open(kind, cuts.kinds().get(kind).capacity(), counts.length);
                    opened.add(open);
                }
                open.amounts[size]++;
                open.left -= cuts.size(size);
            }
        }
        opened.forEach(open -> exchange(open, free));
        return opened.stream()
                .map(o -> new MergedCuts.Pattern(o.kind, o.amounts))
                .toList();
    }

    private static Open bestFit(List<Open> opened, long size) {
        Open best = null;
        for (Open open : opened) {
            if (open.left >= size && (best == null || open.left < best.left)) {
                best = open;
            }
        }
        return best;
    }

    private int newKind(long[] free, long size, int preferred, boolean shelfFirst) {
        int cheapest = -1;
        int shelf = -1;
        for (int k = 0; k < free.length; k++) {
            MergedCuts.Kind kind = cuts.kinds().get(k);
            if (free[k] <= 0 || kind.capacity() < size) {
                continue;
            }
            if (cheapest < 0 || kind.cost() < cuts.kinds().get(cheapest).cost()) {
                cheapest = k;
            }
            if (shelf < 0 && kind.available() != Stock.ANY) {
                shelf = k;
            }
        }
        if (shelfFirst && shelf >= 0) {
            return shelf;
        }
        boolean preferredFits =
                free[preferred] > 0 && cuts.kinds().get(preferred).capacity() >= size;
        return preferredFits ? preferred : cheapest;
    }

    private void exchange(Open open, long[] free) {
        long taken = cuts.taken(open.amounts);
        for (int k = 0; k < free.length; k++) {
            MergedCuts.Kind kind = cuts.kinds().get(k);
            MergedCuts.Kind now = cuts.kinds().get(open.kind);
            if (free[k] > 0 && kind.capacity() >= taken && kind.cost() < now.cost()) {
                free[open.kind]++;
                free[k]--;
                open.kind = k;
            }
        }
    }
}
