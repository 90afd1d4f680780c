package org.runbend.optimizer.cutting.patterns;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.mip.Watch;

/**
 * Cuts wanted pieces from several kinds of stock at least cost; at that cost with least scrap, then with the fewest new
 * stock pieces, then with the fewest different patterns, level by level.
 *
 * <p>Model: minimise sum c_j x_p over patterns p of kind j, subject to sum a_ip x_p = d_i, at most the available number of
 * each kind, x_p whole.
 *
 * <p>Method: first-fit decreasing and best filling for a start, column generation with exact pricing in whole numbers,
 * dives; with several kinds of stock branching on the number used of each ({@link CountBranching}); at the end an integer
 * program over all patterns whose reduced cost fits into the gap ({@link GapProgram}), and one for each later level.
 *
 * <p>Bound: the pattern program's prices in scaled integers, lifted to the next sum of costs. Source: Gilmore and Gomory
 * 1961, https://doi.org/10.1287/opre.9.6.849. Limits are rounds, nodes and pattern counts, never a clock.
 */
public final class PatternCutting {
    /** Nodes of a search for patterns: chosen, not measured. */
    private static final long SEARCH_NODES = 5_000_000;
    /** Patterns of the program within the gap: chosen, not measured. */
    private static final int PATTERNS = 30_000;
    /** Nodes of the program within the gap: chosen, not measured. */
    private static final int TREE_NODES = 200_000;
    /** Patterns of the program of settled numbers: chosen, not measured; bench seed 18 has 212. */
    private static final int FIT_PATTERNS = 1_500;
    /** Nodes of it: chosen, not measured. */
    private static final int FIT_NODES = 2_000;
    /** Last dives at least: chosen, not measured. */
    private static final int LEAST_DIVES = 8;
    /** Last dives at most: chosen, not measured. */
    private static final int MOST_DIVES = 64;
    /** Table cells that the last dives may take for one pricing each: chosen, not measured. */
    private static final long DIVING = 30_000_000;

    /** Nodes of branching on counts: chosen, not measured. */
    private static final int BRANCHES = 2_000;
    /** Any number would do; chosen. */
    private static final long SEED = 20_260_101L;

    private static final Bound NOTHING = new Bound(0, Bound.Proof.MATERIAL);

    private final Watch watch;

    /** An engine that nobody watches. */
    public PatternCutting() {
        this(Watch.NONE);
    }

    /** An engine that tells what it learns and ends early when asked to. */
    public PatternCutting(Watch watch) {
        this.watch = watch;
    }

    /** The cheapest plan found with its bounds, or why there is none. */
    public Answer<CuttingSolution> solve(CuttingProblem problem) {
        MergedCuts cuts = new MergedCuts(problem);
        if (cuts.sizeCount() == 0) {
            return Answer.found(new CuttingSolution(List.of(), 0, 0, 0, 0, NOTHING, NOTHING, NOTHING, NOTHING));
        }
        Optional<Answer<CuttingSolution>> tooLong = tooLong(problem);
        return tooLong.isPresent() ? tooLong.get() : new Run(problem, cuts, watch).solve();
    }

    private static Optional<Answer<CuttingSolution>> tooLong(CuttingProblem problem) {
        long longest = problem.stock().stream()
                .filter(s -> s.available() > 0)
                .mapToLong(s -> s.length() - problem.endTrim())
                .max()
                .orElse(0);
        return problem.demands().stream()
                .filter(d -> d.count() > 0 && d.length() > longest)
                .findFirst()
                .map(d -> Answer.none(String.format(
                        Locale.ROOT,
                        "cut %s of %.2f mm is longer than any stock allows (%.2f mm)",
                        d.name(),
                        d.length() / 100.0,
                        Math.max(0, longest) / 100.0)));
    }

    /** One problem on its way: the best plan and the best bound. */
    private static final class Run {
        private final MergedCuts cuts;
        private final CutUnits units;
        private final Watch watch;
        private final ResidualProblem all;
        private final CostSums sums;
        private final FirstFitDecreasing firstPlans;
        private final ColumnGeneration generation;
        private final Diving diving;
        private final GapProgram gap;
        private final FitProgram fit;
        private final Set<Pattern> pool = new LinkedHashSet<>();
        private PatternPlan plan;
        private Relaxation root;
        private Bound bound = NOTHING;

        Run(CuttingProblem problem, MergedCuts cuts, Watch watch) {
            this.cuts = cuts;
            this.watch = watch;
            units = new CutUnits(cuts);
            all = ResidualProblem.of(cuts);
            firstPlans = new FirstFitDecreasing(cuts, units);
            firstPlans.solve(all).ifPresent(p -> plan = p);
            sums = new CostSums(problem.stock(), plan == null ? mostCost() : plan.cost());
            PatternTable table = new PatternTable(units, SEARCH_NODES);
            generation = new ColumnGeneration(cuts, table, sums, watch);
            diving = new Diving(cuts, generation, firstPlans, sums, watch);
            fit = new FitProgram(cuts, units, table, FIT_PATTERNS, FIT_NODES, watch);
            gap = new GapProgram(cuts, units, SEARCH_NODES, PATTERNS, TREE_NODES, watch);
        }

        private long mostCost() {
            long dearest =
                    cuts.kinds().stream().mapToLong(MergedCuts.Kind::cost).max().orElse(0);
            return Math.multiplyExact(dearest, cuts.totalCount());
        }

        Answer<CuttingSolution> solve() {
            learn(new CutMaterial(cuts).bound(), Bound.Proof.MATERIAL);
            if (isOpen()) {
                relax();
            }
            if (isOpen()) {
                dive(Optional.empty());
            }
            if (isOpen() && CountBranching.isUseful(cuts.kinds())) {
                branch();
            }
            Optional<Answer<CuttingSolution>> none = isOpen() && !watch.asksForEnd() ? closeGap() : Optional.empty();
            for (int n = 0; n < dives() && isOpen() && none.isEmpty() && !watch.asksForEnd(); n++) {
                dive(Optional.of(new Random(SEED + n)));
            }
            if (plan == null) {
                return none.orElseGet(() -> Answer.unknown("no plan was found within the work limit"));
            }
            double[] prices = root == null
                    ? new double[cuts.sizeCount()]
                    : root.prices().orElseGet(() -> new double[cuts.sizeCount()]);
            LaterLevels.Outcome levels = new LaterLevels(cuts, gap, watch).improve(plan, all, prices, !isOpen());
            plan = levels.plan();
            return Answer.found(new CuttingSolution(
                    cuts.dealt(plan),
                    plan.cost(),
                    plan.scrap(),
                    Math.toIntExact(plan.opened()),
                    plan.times().size(),
                    bound,
                    levels.scrap(),
                    levels.opened(),
                    levels.patterns()));
        }

        /** More of them where each is little work. */
        private long dives() {
            long cells = Math.max(1, units.greatestCapacity() * units.sizeCount());
            return Math.max(LEAST_DIVES, Math.min(MOST_DIVES, DIVING / cells));
        }

        private boolean isOpen() {
            return plan == null || plan.cost() > bound.value();
        }

        private void offer(PatternPlan candidate) {
            pool.addAll(candidate.times().keySet());
            if (plan == null || candidate.isBetterThan(plan)) {
                plan = candidate;
                tell();
            }
        }

        private void learn(long value, Bound.Proof proof) {
            long lifted = sums.lift(value);
            if (plan != null) {
                lifted = Math.min(lifted, plan.cost());
            }
            bound = bound.max(new Bound(lifted, proof));
            tell();
        }

        private void tell() {
            watch.learned(plan == null ? Long.MAX_VALUE : plan.cost(), bound.value());
        }

        private void relax() {
            if (plan != null) {
                pool.addAll(plan.times().keySet());
            }
            root = generation.solve(all, pool, plan == null ? Long.MAX_VALUE : plan.cost());
            pool.addAll(root.patterns());
            learn(root.bound(), Bound.Proof.PATTERN_LP);
        }

        private void dive(Optional<Random> random) {
            long best = plan == null ? Long.MAX_VALUE / 2 : plan.cost();
            diving.dive(all, root, best, bound.value(), random).ifPresent(this::offer);
        }

        private void branch() {
            long best = plan == null ? Math.addExact(mostCost(), 1) : plan.cost();
            CountBranching.Outcome outcome = new CountBranching(
                            cuts, generation, diving, gap, fit, sums, BRANCHES, watch)
                    .solve(all, root, best);
            outcome.plan().ifPresent(this::offer);
            learn(outcome.bound(), outcome.proof());
        }

        /** Says so when there is no plan at all. */
        private Optional<Answer<CuttingSolution>> closeGap() {
            long most = plan == null ? mostCost() : sums.below(plan.cost());
            if (bound.value() > most) {
                return Optional.of(Answer.none("there is not enough stock for all cuts"));
            }
            root = generation.tighten(all, pool);
            learn(root.bound(), Bound.Proof.PATTERN_LP);
            double[] prices = root.prices().orElseGet(() -> new double[cuts.sizeCount()]);
            GapProgram.Outcome outcome = gap.solve(all, prices, bound.value(), most);
            outcome.plan().ifPresent(this::offer);
            if (outcome.decided() && plan != null) {
                learn(plan.cost(), Bound.Proof.INTEGER_PROGRAM);
            }
            return outcome.decided() && plan == null
                    ? Optional.of(Answer.none("there is not enough stock for all cuts"))
                    : Optional.empty();
        }
    }
}
