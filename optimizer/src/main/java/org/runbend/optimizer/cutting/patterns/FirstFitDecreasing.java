package org.runbend.optimizer.cutting.patterns;

import java.util.Optional;
import org.runbend.optimizer.cutting.Stock;

/**
 * First plans, one stock piece after the other: it begins with the longest cut left, and the rest is filled either with
 * the longest that fits (first-fit decreasing) or with the subset that fills it best. A new piece is the cheapest of what
 * is limited and fits, else of the kind preferred; at the end pieces change to the cheapest kind that still holds them.
 */
final class FirstFitDecreasing {
    /** Work for best filling, in table cells times stock pieces: chosen, not measured. */
    private static final long FILLING = 40_000_000;

    private final MergedCuts cuts;
    private final SubsetFill filling;

    FirstFitDecreasing(MergedCuts cuts, CutUnits units) {
        this.cuts = cuts;
        filling = new SubsetFill(units);
    }

    /** The cheapest plan over all preferred kinds for the counts and stock left, or empty when none serves every cut. */
    Optional<PatternPlan> solve(ResidualProblem residual) {
        PatternPlan best = null;
        for (int preferred = 0; preferred < cuts.kinds().size(); preferred++) {
            for (int way = 0; way < 4; way++) {
                boolean shelfFirst = way % 2 == 0;
                if (!shelfFirst && !residual.hasLimits()) {
                    continue;
                }
                PatternPlan plan = plan(residual, preferred, shelfFirst, way >= 2);
                if (plan != null && (best == null || plan.isBetterThan(best))) {
                    best = plan;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private PatternPlan plan(ResidualProblem residual, int preferred, boolean shelfFirst, boolean fillsBest) {
        int[] counts = residual.counts();
        long[] free = residual.most();
        PatternPlan plan = new PatternPlan(cuts);
        long work = 0;
        for (int first = next(counts, 0); first < counts.length; first = next(counts, first)) {
            int kind = newKind(free, cuts.size(first), preferred, shelfFirst);
            if (kind < 0) {
                return null;
            }
            boolean fills = fillsBest && work < FILLING && filling.isWorthwhile();
            work += fills ? filling.work() : 0;
            Pattern pattern = fills ? filling.fill(kind, counts, first) : longestFirst(kind, counts, first);
            int times = (int) Math.min(free[kind], pattern.timesWithin(counts));
            free[kind] -= times;
            pattern.takeFrom(counts, times);
            plan.add(pattern, times);
        }
        return exchanged(plan, free);
    }

    private static int next(int[] counts, int from) {
        int next = from;
        while (next < counts.length && counts[next] == 0) {
            next++;
        }
        return next;
    }

    private Pattern longestFirst(int kind, int[] counts, int first) {
        int[] amounts = new int[counts.length];
        long left = cuts.kinds().get(kind).capacity();
        for (int i = first; i < counts.length && left > 0; i++) {
            amounts[i] = (int) Math.min(counts[i], left / cuts.size(i));
            left -= amounts[i] * cuts.size(i);
        }
        return Pattern.of(kind, amounts);
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

    /** Each pattern from the cheapest kind that holds it and is free, the shortest of these. */
    private PatternPlan exchanged(PatternPlan plan, long[] free) {
        PatternPlan exchanged = new PatternPlan(cuts);
        plan.times().forEach((pattern, times) -> {
            int left = times;
            long taken = cuts.taken(pattern);
            for (int k = 0; k < free.length && left > 0; k++) {
                MergedCuts.Kind kind = cuts.kinds().get(k);
                MergedCuts.Kind now = cuts.kinds().get(pattern.kind());
                boolean gains =
                        kind.cost() < now.cost() || (kind.cost() == now.cost() && kind.capacity() < now.capacity());
                if (gains && free[k] > 0 && kind.capacity() >= taken) {
                    int moved = (int) Math.min(left, free[k]);
                    free[k] -= moved;
                    free[pattern.kind()] += moved;
                    exchanged.add(pattern.from(k), moved);
                    left -= moved;
                }
            }
            exchanged.add(pattern, left);
        });
        return exchanged;
    }
}
