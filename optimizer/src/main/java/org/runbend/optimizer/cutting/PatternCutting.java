package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Cuts wanted pieces from several kinds of stock at least cost, then with least scrap.
 *
 * <p>Model: minimise sum c_j x_p over patterns p of kind j, subject to sum a_ip x_p = d_i, at most the available number of
 * each kind, x_p whole.
 *
 * <p>Method: best-fit decreasing for a start, patterns by column generation, an integer program over the patterns at hand,
 * and where that leaves a gap an integer program over all patterns whose reduced cost fits into it. Scrap is minimised over
 * all patterns that a plan of least cost can use.
 *
 * <p>Bound: the pattern program's prices in scaled integers, lifted to the next sum of costs. Source: Gilmore and Gomory
 * 1961, https://doi.org/10.1287/opre.9.6.849. Limits are rounds, nodes and pattern counts, never a clock.
 */
public final class PatternCutting {
    private static final int ROUNDS = 400;
    private static final long SEARCH_NODES = 2_000_000;
    private static final int PATTERNS = 20_000;
    private static final int TREE_NODES = 20_000;
    private static final Bound NOTHING = new Bound(0, Bound.Proof.MATERIAL);

    /** The cheapest plan found with its bounds, or why there is none. */
    public CuttingAnswer solve(CuttingProblem problem) {
        MergedCuts cuts = new MergedCuts(problem);
        if (cuts.sizeCount() == 0) {
            return new CuttingSolution(List.of(), 0, 0, NOTHING, NOTHING);
        }
        Optional<Impossible> tooLong = tooLong(problem);
        return tooLong.isPresent() ? tooLong.get() : new Run(problem, cuts).solve();
    }

    private static Optional<Impossible> tooLong(CuttingProblem problem) {
        long longest = problem.stock().stream()
                .filter(s -> s.available() > 0)
                .mapToLong(s -> s.length() - problem.endTrim())
                .max()
                .orElse(0);
        return problem.demands().stream()
                .filter(d -> d.count() > 0 && d.length() > longest)
                .findFirst()
                .map(d -> new Impossible(
                        String.format(
                                Locale.ROOT,
                                "cut %s of %.2f mm is longer than any stock allows (%.2f mm)",
                                d.name(),
                                d.length() / 100.0,
                                Math.max(0, longest) / 100.0),
                        true));
    }

    /** One problem on its way: the columns so far, the best plan and the best bound. */
    private static final class Run {
        private final CuttingProblem problem;
        private final MergedCuts cuts;
        private final double dearest;
        private final List<MergedCuts.Pattern> columns = new ArrayList<>();
        private final Set<List<Long>> known = new HashSet<>();
        private List<MergedCuts.Pattern> plan;
        private PatternDuals duals;
        private Bound bound = NOTHING;

        Run(CuttingProblem problem, MergedCuts cuts) {
            this.problem = problem;
            this.cuts = cuts;
            dearest = Math.max(
                    1,
                    cuts.kinds().stream().mapToLong(MergedCuts.Kind::cost).max().orElse(1));
        }

        CuttingAnswer solve() {
            new FirstFitDecreasing(cuts).solve(cuts.counts()).ifPresent(this::offer);
            generate();
            if (isOpen()) {
                offerAnswer(solveOver(columns, false));
            }
            Optional<Impossible> none = isOpen() ? closeGap() : Optional.empty();
            if (plan == null) {
                return none.orElseGet(() -> new Impossible("no plan was found within the work limit", false));
            }
            Bound scrapBound = leastScrap();
            return cuts.solution(plan, bound, scrapBound);
        }

        private boolean isOpen() {
            return plan == null || cost(plan) > bound.value();
        }

        private long cost(List<MergedCuts.Pattern> patterns) {
            return patterns.stream()
                    .mapToLong(p -> cuts.kinds().get(p.kind()).cost())
                    .sum();
        }

        private long scrap(List<MergedCuts.Pattern> patterns) {
            return patterns.stream().mapToLong(cuts::scrap).sum();
        }

        private void offer(List<MergedCuts.Pattern> candidate) {
            candidate.forEach(this::addColumn);
            boolean better = plan == null
                    || cost(candidate) < cost(plan)
                    || (cost(candidate) == cost(plan) && scrap(candidate) < scrap(plan));
            if (better) {
                plan = candidate;
            }
        }

        private boolean addColumn(MergedCuts.Pattern p) {
            List<Long> key = new ArrayList<>();
            key.add((long) p.kind());
            Arrays.stream(p.amounts()).forEach(key::add);
            return known.add(key) && columns.add(p);
        }

        /** Column generation; keeps the prices that gave the best bound. */
        private void generate() {
            boolean found = true;
            for (int round = 0; round < ROUNDS && found && isOpen(); round++) {
                Optional<LinearSolver.Answer> answer = new LinearSolver().solve(master());
                if (answer.isEmpty()) {
                    return;
                }
                double[] prices = new double[cuts.sizeCount()];
                for (int i = 0; i < prices.length; i++) {
                    prices[i] = answer.get().duals()[i] * dearest;
                }
                PatternDuals now = new PatternDuals(cuts, prices, SEARCH_NODES);
                keep(now);
                found = false;
                for (int k = 0; k < cuts.kinds().size(); k++) {
                    found |= addColumn(
                            new MergedCuts.Pattern(k, now.best().get(k).amounts()));
                }
            }
            if (duals == null) {
                keep(new PatternDuals(cuts, new double[cuts.sizeCount()], SEARCH_NODES));
            }
        }

        private void keep(PatternDuals now) {
            if (duals == null || now.bound() >= duals.bound()) {
                duals = now;
            }
            long lifted = Costs.lift(problem.stock(), duals.bound());
            bound = bound.max(new Bound(lifted, Bound.Proof.PATTERN_LP));
        }

        /** Rows: sizes, then kinds; a last column for each size stands for cuts left undone at a deterring cost. */
        private Model master() {
            Model model = rows(columns, false);
            for (int i = 0; i < cuts.sizeCount(); i++) {
                model.column(100, Double.POSITIVE_INFINITY, new int[] {i}, new double[] {1});
            }
            return model;
        }

        private Model rows(List<MergedCuts.Pattern> patterns, boolean exact) {
            Model model = new Model();
            for (int i = 0; i < cuts.sizeCount(); i++) {
                model.row((double) cuts.count(i), exact ? (double) cuts.count(i) : Double.POSITIVE_INFINITY);
            }
            for (MergedCuts.Kind kind : cuts.kinds()) {
                model.row(0, (double) Math.min(kind.available(), cuts.totalCount()));
            }
            for (MergedCuts.Pattern p : patterns) {
                addTo(model, p, cuts.kinds().get(p.kind()).cost() / dearest);
            }
            return model;
        }

        private void addTo(Model model, MergedCuts.Pattern p, double cost) {
            int[] rows = new int[cuts.sizeCount() + 1];
            double[] entries = new double[rows.length];
            int used = 0;
            for (int i = 0; i < cuts.sizeCount(); i++) {
                if (p.amounts()[i] > 0) {
                    rows[used] = i;
                    entries[used++] = p.amounts()[i];
                }
            }
            rows[used] = cuts.sizeCount() + p.kind();
            entries[used++] = 1;
            model.column(cost, (double) cuts.totalCount(), Arrays.copyOf(rows, used), Arrays.copyOf(entries, used));
        }

        private IntegerSolver.Answer solveOver(List<MergedCuts.Pattern> patterns, boolean exact) {
            return new IntegerSolver(TREE_NODES).solve(rows(patterns, exact));
        }

        private void offerAnswer(IntegerSolver.Answer answer) {
            if (answer.hasValues()) {
                offer(withoutSurplus(List.copyOf(columns), answer.values()));
            }
        }

        /** The chosen patterns with cuts beyond the demand taken out, each then in the cheapest kind that has room. */
        private List<MergedCuts.Pattern> withoutSurplus(List<MergedCuts.Pattern> patterns, long[] times) {
            long[] wanted = cuts.counts();
            List<MergedCuts.Pattern> chosen = new ArrayList<>();
            for (int p = 0; p < patterns.size(); p++) {
                for (long n = 0; n < times[p]; n++) {
                    long[] amounts = patterns.get(p).amounts().clone();
                    for (int i = 0; i < amounts.length; i++) {
                        amounts[i] = Math.min(amounts[i], wanted[i]);
                        wanted[i] -= amounts[i];
                    }
                    if (Arrays.stream(amounts).anyMatch(a -> a > 0)) {
                        chosen.add(new MergedCuts.Pattern(patterns.get(p).kind(), amounts));
                    }
                }
            }
            return chosen;
        }

        /** An integer program over every pattern that a cheaper plan could use; says so when there is no plan at all. */
        private Optional<Impossible> closeGap() {
            long below = plan == null ? Math.multiplyExact((long) dearest, cuts.totalCount()) : cost(plan) - 1;
            Optional<List<MergedCuts.Pattern>> all = duals.within(below, PATTERNS);
            if (all.isEmpty()) {
                return Optional.empty();
            }
            IntegerSolver.Answer answer = solveOver(all.get(), false);
            if (answer.hasValues()) {
                offer(withoutSurplus(all.get(), answer.values()));
            }
            boolean decided = answer.status() == IntegerSolver.Status.INFEASIBLE
                    || answer.status() == IntegerSolver.Status.OPTIMAL;
            if (decided && plan != null) {
                bound = bound.max(new Bound(cost(plan), Bound.Proof.INTEGER_PROGRAM));
            }
            return decided && plan == null
                    ? Optional.of(new Impossible("there is not enough stock for all cuts", true))
                    : Optional.empty();
        }

        /** Minimises scrap at the plan's cost over all patterns such a plan can use. */
        private Bound leastScrap() {
            if (scrap(plan) == 0 || isOpen()) {
                return NOTHING;
            }
            Optional<List<MergedCuts.Pattern>> all = duals.within(cost(plan), PATTERNS);
            if (all.isEmpty()) {
                return NOTHING;
            }
            IntegerSolver.Answer answer = new IntegerSolver(TREE_NODES).solve(scrapModel(all.get()));
            if (answer.hasValues()) {
                offerScrap(withoutSurplus(all.get(), answer.values()));
            }
            return answer.status() == IntegerSolver.Status.OPTIMAL
                    ? new Bound(scrap(plan), Bound.Proof.INTEGER_PROGRAM)
                    : NOTHING;
        }

        private void offerScrap(List<MergedCuts.Pattern> candidate) {
            if (cost(candidate) == cost(plan) && scrap(candidate) < scrap(plan)) {
                plan = candidate;
            }
        }

        private Model scrapModel(List<MergedCuts.Pattern> patterns) {
            Model costs = rows(patterns, true);
            Model model = new Model();
            for (int r = 0; r < costs.rowCount(); r++) {
                model.row(costs.lower(r), costs.upper(r));
            }
            long grain = Costs.grain(problem.stock());
            int costRow = model.row((double) cost(plan) / grain, (double) cost(plan) / grain);
            for (int p = 0; p < patterns.size(); p++) {
                Model.Column column = costs.columns().get(p);
                int entries = column.rows().length;
                int[] rows = Arrays.copyOf(column.rows(), entries + 1);
                double[] values = Arrays.copyOf(column.entries(), entries + 1);
                rows[entries] = costRow;
                values[entries] =
                        (double) cuts.kinds().get(patterns.get(p).kind()).cost() / grain;
                model.column((double) cuts.scrap(patterns.get(p)), column.upper(), rows, values);
            }
            return model;
        }
    }
}
