package org.runbend.optimizer.cutting.patterns;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.mip.IntegerSolver;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Watch;

/**
 * The levels after cost: least scrap, then fewest new stock pieces, then fewest different patterns, one after the other,
 * each at what the ones before came to. A level is an integer program over all patterns that a plan of that cost can use;
 * where these are too many, or the program does not end within its nodes, the plan at hand is the best found and nothing
 * is proved.
 */
final class LaterLevels {
    private static final Bound NOTHING = new Bound(0, Bound.Proof.MATERIAL);
    /** Patterns up to which later levels are solved: chosen, not measured. */
    private static final int PATTERNS = 2_000;
    /** The same where each pattern has a switch: chosen, not measured. */
    private static final int SWITCHED_PATTERNS = 300;
    /** Nodes of each level: chosen, not measured. */
    private static final int NODES = 500;

    private final MergedCuts cuts;
    private final GapProgram gap;
    private final Watch watch;

    LaterLevels(MergedCuts cuts, GapProgram gap, Watch watch) {
        this.cuts = cuts;
        this.gap = gap;
        this.watch = watch;
    }

    /** The plan after the last level, with the bounds proved for scrap, new stock pieces and patterns. */
    record Outcome(PatternPlan plan, Bound scrap, Bound opened, Bound patterns) {}

    /** Goes through the levels from a plan of least cost; prices say which patterns such a plan can use. */
    Outcome improve(PatternPlan plan, ResidualProblem all, double[] prices, boolean costIsProved) {
        if (!costIsProved || watch.asksForEnd()) {
            return new Outcome(plan, NOTHING, NOTHING, NOTHING);
        }
        Optional<List<Pattern>> patterns = gap.within(all, prices, plan.cost(), false);
        if (patterns.isEmpty() || patterns.get().size() > PATTERNS) {
            return new Outcome(plan, NOTHING, NOTHING, NOTHING);
        }
        Level scrap = new Level(patterns.get(), all, plan).least(Measure.SCRAP);
        Level opened = scrap.isProved() ? scrap.least(Measure.OPENED) : scrap;
        boolean switches = opened.isProved() && patterns.get().size() <= SWITCHED_PATTERNS;
        Level fewest = switches ? opened.leastPatterns() : opened;
        return new Outcome(
                fewest.plan,
                bound(scrap.isProved(), scrap.plan.scrap()),
                bound(scrap.isProved() && opened.isProved(), opened.plan.opened()),
                bound(switches && fewest.isProved(), fewest.plan.times().size()));
    }

    private static Bound bound(boolean isProved, long value) {
        return isProved ? new Bound(value, Bound.Proof.INTEGER_PROGRAM) : NOTHING;
    }

    private enum Measure {
        SCRAP,
        OPENED
    }

    /** A plan on its way through the levels. */
    private final class Level {
        private final List<Pattern> patterns;
        private final ResidualProblem all;
        private final PatternPlan plan;
        private boolean proved = true;

        Level(List<Pattern> patterns, ResidualProblem all, PatternPlan plan) {
            this.patterns = patterns;
            this.all = all;
            this.plan = plan;
        }

        boolean isProved() {
            return proved;
        }

        private long weight(Pattern p, Measure measure) {
            if (measure == Measure.SCRAP) {
                return cuts.scrap(p);
            }
            return cuts.kinds().get(p.kind()).isNew() ? 1 : 0;
        }

        Level least(Measure measure) {
            if (patterns.stream().allMatch(p -> weight(p, measure) == 0)) {
                return this;
            }
            Model model = new Model();
            int costRow = rows(model, measure == Measure.OPENED);
            Model plain = gap.model(patterns, all, true);
            for (int p = 0; p < patterns.size(); p++) {
                addTo(
                        model,
                        plain.columns().get(p),
                        patterns.get(p),
                        (double) weight(patterns.get(p), measure),
                        costRow);
            }
            return solved(model);
        }

        /** Rows of the plain program and the cost; with {@code scrapToo} the scrap that the plan has. */
        private int rows(Model model, boolean scrapToo) {
            Model plain = gap.model(patterns, all, true);
            for (int r = 0; r < plain.rowCount(); r++) {
                model.row(plain.lower(r), plain.upper(r));
            }
            int costRow = model.row((double) plan.cost() / cuts.grain(), (double) plan.cost() / cuts.grain());
            if (scrapToo) {
                model.row(0, (double) plan.scrap());
            }
            return costRow;
        }

        private void addTo(Model model, Model.Column column, Pattern p, double cost, int costRow) {
            int extra = model.rowCount() - costRow;
            int entries = column.rows().length;
            int[] rows = Arrays.copyOf(column.rows(), entries + extra);
            double[] values = Arrays.copyOf(column.entries(), entries + extra);
            double[] last = {
                (double) cuts.kinds().get(p.kind()).cost() / cuts.grain(), (double) cuts.scrap(p), newOne(p)
            };
            for (int e = 0; e < extra; e++) {
                rows[entries + e] = costRow + e;
                values[entries + e] = last[e];
            }
            model.column(cost, column.upper(), rows, values);
        }

        private double newOne(Pattern p) {
            return cuts.kinds().get(p.kind()).isNew() ? 1 : 0;
        }

        /** As many 0/1 switches as patterns: a pattern is cut only where its switch is on. */
        Level leastPatterns() {
            Model model = new Model();
            int costRow = rows(model, true);
            model.row(0, (double) plan.opened());
            Model plain = gap.model(patterns, all, true);
            for (int p = 0; p < patterns.size(); p++) {
                addTo(model, plain.columns().get(p), patterns.get(p), 0, costRow);
            }
            Model switched = new Model();
            for (int r = 0; r < model.rowCount(); r++) {
                switched.row(model.lower(r), model.upper(r));
            }
            for (Model.Column c : model.columns()) {
                int link = switched.row(Double.NEGATIVE_INFINITY, 0);
                int[] rows = Arrays.copyOf(c.rows(), c.rows().length + 1);
                double[] values = Arrays.copyOf(c.entries(), rows.length);
                rows[rows.length - 1] = link;
                values[rows.length - 1] = 1;
                switched.column(0, c.upper(), rows, values);
            }
            for (int p = 0; p < patterns.size(); p++) {
                double most = model.columns().get(p).upper();
                switched.column(1, 1, new int[] {model.rowCount() + p}, new double[] {-most});
            }
            return solved(switched);
        }

        private Level solved(Model model) {
            IntegerSolver.Answer answer = new IntegerSolver(NODES, watch).solve(model);
            PatternPlan next = plan;
            if (answer.hasValues()) {
                long[] times = Arrays.copyOf(answer.values(), patterns.size());
                PatternPlan candidate = GapProgram.withoutSurplus(cuts, patterns, times);
                next = candidate.isBetterThan(plan) ? candidate : plan;
            }
            Level level = new Level(patterns, all, next);
            level.proved = proved && answer.status() == IntegerSolver.Status.OPTIMAL;
            return level;
        }
    }
}
