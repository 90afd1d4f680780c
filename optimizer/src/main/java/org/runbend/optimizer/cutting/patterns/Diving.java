package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.mip.Watch;

/**
 * Rounds a relaxation to a plan: whole times are fixed, else the greatest fraction once; the relaxation of what is left is
 * then solved again, and each step is finished with the first plans of {@link FirstFitDecreasing}. It ends when the plan
 * is as good as the bound or what is left cannot give a better one.
 */
final class Diving {
    /** A fraction over this is rounded up: chosen, not measured. */
    private static final double ALMOST = 0.9;

    private final MergedCuts cuts;
    private final ColumnGeneration generation;
    private final FirstFitDecreasing finishing;
    private final CostSums sums;
    private final Watch watch;

    Diving(MergedCuts cuts, ColumnGeneration generation, FirstFitDecreasing finishing, CostSums sums, Watch watch) {
        this.cuts = cuts;
        this.generation = generation;
        this.finishing = finishing;
        this.sums = sums;
        this.watch = watch;
    }

    /**
     * The best plan met that costs less than {@code best}, if any; no better one than {@code bound} is looked for. With
     * {@code random} fractions are shaken before the greatest is chosen.
     */
    Optional<PatternPlan> dive(ResidualProblem root, Relaxation start, long best, long bound, Optional<Random> random) {
        PatternPlan fixed = new PatternPlan(cuts);
        PatternPlan found = null;
        ResidualProblem rest = root;
        Relaxation relaxed = start;
        long cost = best;
        while (rest.total() > 0 && relaxed.hasTimes() && !watch.asksForEnd()) {
            if (!fix(fixed, rest, relaxed, random)) {
                break;
            }
            rest = root.without(fixed);
            Optional<PatternPlan> finish = finishing.solve(rest);
            if (finish.isPresent() && fixed.cost() + finish.get().cost() < cost) {
                found = fixed.copy();
                found.addAll(finish.get());
                cost = found.cost();
            }
            if (cost <= bound || rest.total() == 0) {
                break;
            }
            relaxed = generation.solve(rest, relaxed.patterns(), cost - fixed.cost());
            if (relaxed.bound() == Long.MAX_VALUE || fixed.cost() + sums.lift(relaxed.bound()) >= cost) {
                break;
            }
        }
        return Optional.ofNullable(found);
    }

    /** Fixes some patterns; false when none of the relaxation can be cut from what is left. */
    private boolean fix(PatternPlan fixed, ResidualProblem rest, Relaxation relaxed, Optional<Random> random) {
        int[] counts = rest.counts();
        long[] free = rest.most();
        List<Integer> order = order(relaxed, random);
        boolean any = false;
        for (int p : order) {
            Pattern pattern = relaxed.patterns().get(p);
            int whole = (int) Math.floor(relaxed.times(p) + (1 - ALMOST));
            int times = (int) Math.min(Math.min(whole, pattern.timesWithin(counts)), free[pattern.kind()]);
            if (times > 0) {
                take(fixed, pattern, times, counts, free);
                any = true;
            }
        }
        for (int n = 0; n < order.size() && !any; n++) {
            Pattern pattern = relaxed.patterns().get(order.get(n)).within(counts);
            if (!pattern.isEmpty() && free[pattern.kind()] > 0) {
                take(fixed, pattern, 1, counts, free);
                any = true;
            }
        }
        return any;
    }

    private static void take(PatternPlan fixed, Pattern pattern, int times, int[] counts, long[] free) {
        fixed.add(pattern, times);
        pattern.takeFrom(counts, times);
        free[pattern.kind()] -= times;
    }

    /** Columns above 0, greatest fraction first. */
    private static List<Integer> order(Relaxation relaxed, Optional<Random> random) {
        List<Integer> order = new ArrayList<>();
        double[] key = new double[relaxed.patterns().size()];
        for (int p = 0; p < key.length; p++) {
            if (relaxed.times(p) > 1e-6) {
                order.add(p);
                double shake = random.isPresent() ? 0.5 + random.get().nextDouble() : 1;
                key[p] = relaxed.times(p) * shake;
            }
        }
        order.sort(Comparator.comparingDouble((Integer p) -> -key[p]).thenComparingInt(p -> p));
        return order;
    }
}
