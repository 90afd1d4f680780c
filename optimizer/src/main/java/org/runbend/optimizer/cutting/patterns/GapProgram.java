package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.mip.IntegerSolver;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Watch;

/**
 * The last gap: every pattern that a plan of at most a given cost can use, by its price, and an integer program over them.
 * A pattern that takes fewer cuts than it could is left out, because rows ask for at least what is wanted.
 */
final class GapProgram {
    /** Linear programs of one dive: chosen, not measured. */
    private static final int DIVE_SOLVES = 120;
    /** Dives from the start: chosen, not measured. */
    private static final int DIVES = 4;
    /** Costs above the bound that are looked at one by one: chosen, not measured. */
    private static final int LOOKS = 6;
    /** Nodes of a program near the bound: chosen, not measured. */
    private static final int NEAR_NODES = 2_000;
    /** Patterns of a program near the bound: chosen, not measured. */
    private static final int FEW = 1_500;

    private final MergedCuts cuts;
    private final CutUnits units;
    private final long searchNodes;
    private final int patternLimit;
    private final int nodes;
    private final Watch watch;

    GapProgram(MergedCuts cuts, CutUnits units, long searchNodes, int patternLimit, int nodes, Watch watch) {
        this.cuts = cuts;
        this.units = units;
        this.searchNodes = searchNodes;
        this.patternLimit = patternLimit;
        this.nodes = nodes;
        this.watch = watch;
    }

    /**
     * What came of it.
     *
     * @param plan of at most the cost asked, if one was found
     * @param decided true when no better plan of at most that cost exists
     * @param most the cost up to which was looked
     */
    record Outcome(Optional<PatternPlan> plan, boolean decided, long most) {
        static Outcome unknown() {
            return new Outcome(Optional.empty(), false, 0);
        }
    }

    /** Looks for the cheapest plan that costs at least {@code least} and at most {@code most}. */
    Outcome solve(ResidualProblem residual, double[] prices, long least, long most) {
        Optional<List<Pattern>> patterns = within(residual, prices, most, true);
        if (patterns.isEmpty()) {
            return Outcome.unknown();
        }
        Optional<PatternPlan> dived =
                new PoolDiving(cuts, DIVE_SOLVES, DIVES, watch).dive(patterns.get(), residual, most);
        if (dived.isPresent() && dived.get().cost() <= least) {
            return new Outcome(dived, true, most);
        }
        Outcome outcome = solveOver(patterns.get(), residual, least, most);
        return outcome.plan().isPresent() ? outcome : new Outcome(dived, outcome.decided() && dived.isEmpty(), most);
    }

    /**
     * As {@link #solve}, but only for the costs from {@code least} up that few patterns can make; {@code most} of the
     * outcome is how far it went.
     */
    Outcome solveNear(ResidualProblem residual, double[] prices, CostSums sums, long least, long most) {
        Optional<List<Pattern>> patterns = few(residual, prices, least);
        if (patterns.isEmpty()) {
            return Outcome.unknown();
        }
        long reach = least;
        long tooFar = most + 1;
        for (int n = 0; n < LOOKS && sums.lift(reach + 1) < tooFar; n++) {
            long next = n == 0 ? most : Math.max(sums.lift(reach + 1), sums.below(reach + (tooFar - reach) / 2));
            Optional<List<Pattern>> more = few(residual, prices, next);
            tooFar = more.isEmpty() ? next : tooFar;
            reach = more.isEmpty() ? reach : next;
            patterns = more.isEmpty() ? patterns : more;
        }
        return near(FEW).solveOver(patterns.get(), residual, least, reach);
    }

    private Optional<List<Pattern>> few(ResidualProblem residual, double[] prices, long cost) {
        return near(FEW).within(residual, prices, cost, true);
    }

    private GapProgram near(int patterns) {
        return new GapProgram(cuts, units, searchNodes, patterns, NEAR_NODES, watch);
    }

    private Outcome solveOver(List<Pattern> patterns, ResidualProblem residual, long least, long most) {
        Model model = model(patterns, residual, false);
        IntegerSolver.Answer answer = new IntegerSolver(nodes, watch).solve(withCost(model, patterns, least, most));
        boolean decided =
                answer.status() == IntegerSolver.Status.INFEASIBLE || answer.status() == IntegerSolver.Status.OPTIMAL;
        return new Outcome(plan(patterns, answer), decided, most);
    }

    private Optional<PatternPlan> plan(List<Pattern> patterns, IntegerSolver.Answer answer) {
        return answer.hasValues() ? Optional.of(withoutSurplus(cuts, patterns, answer.values())) : Optional.empty();
    }

    /**
     * All patterns that a plan of at most {@code cost} can use, by the prices given and by those of length alone; empty
     * when there are too many.
     */
    Optional<List<Pattern>> within(ResidualProblem residual, double[] prices, long cost, boolean fullOnly) {
        List<PatternTable> tables = List.of(new PatternTable(units, searchNodes), new PatternTable(units, searchNodes));
        List<IntegerPrices> integer =
                List.of(tight(residual, prices, tables.get(0)), tight(residual, lengthPrices(), tables.get(1)));
        PatternListing listing = new PatternListing(units, tables, searchNodes);
        List<Pattern> patterns = new ArrayList<>();
        for (int k = 0; k < cuts.kinds().size(); k++) {
            int kind = k;
            long[] least = integer.stream()
                    .mapToLong(p -> p.leastValueWithin(residual, kind, cost))
                    .toArray();
            boolean complete = residual.most(k) <= 0
                    || listing.list(k, least, fullOnly, p -> patterns.add(p) && patterns.size() <= patternLimit);
            if (!complete) {
                return Optional.empty();
            }
        }
        return Optional.of(patterns);
    }

    /** Every cut at its length, at the price of the cheapest stock by length. */
    private double[] lengthPrices() {
        double cheapest = cuts.kinds().stream()
                .filter(k -> k.capacity() > 0)
                .mapToDouble(k -> (double) k.cost() / k.capacity())
                .min()
                .orElse(0);
        double[] prices = new double[cuts.sizeCount()];
        for (int i = 0; i < prices.length; i++) {
            prices[i] = cuts.size(i) * cheapest;
        }
        return prices;
    }

    /** The prices in whole numbers, shrunk until no pattern is worth more than its stock; the table is filled with them. */
    private IntegerPrices tight(ResidualProblem residual, double[] prices, PatternTable table) {
        IntegerPrices plain = noted(residual, prices, table);
        if (plain.shrink() >= 1) {
            return plain;
        }
        double[] shrunk = Arrays.stream(prices).map(p -> p * plain.shrink()).toArray();
        IntegerPrices tight = noted(residual, shrunk, table);
        return tight.scaledBound(residual) >= plain.scaledBound(residual) ? tight : noted(residual, prices, table);
    }

    private IntegerPrices noted(ResidualProblem residual, double[] prices, PatternTable table) {
        IntegerPrices integer = new IntegerPrices(cuts, prices, residual, table);
        for (int k = 0; k < cuts.kinds().size(); k++) {
            if (residual.most(k) > 0) {
                integer.noteNoneAbove(k, table.best(k, 0, 1).noneAbove());
            }
        }
        return integer;
    }

    /** Rows: sizes, then kinds; columns: the patterns, at their cost. */
    Model model(List<Pattern> patterns, ResidualProblem residual, boolean exact) {
        Model model = new Model();
        for (int i = 0; i < cuts.sizeCount(); i++) {
            double count = residual.count(i);
            model.row(count, exact ? count : Double.POSITIVE_INFINITY);
        }
        for (int k = 0; k < cuts.kinds().size(); k++) {
            model.row((double) residual.least(k), (double) residual.most(k));
        }
        for (Pattern p : patterns) {
            int[] rows = new int[p.parts() + 1];
            double[] entries = new double[rows.length];
            for (int part = 0; part < p.parts(); part++) {
                rows[part] = p.size(part);
                entries[part] = p.amount(part);
            }
            rows[p.parts()] = cuts.sizeCount() + p.kind();
            entries[p.parts()] = 1;
            model.column(cost(p), (double) most(p, residual), rows, entries);
        }
        return model;
    }

    private static long most(Pattern p, ResidualProblem residual) {
        long most = 0;
        for (int part = 0; part < p.parts(); part++) {
            most = Math.max(most, -Math.floorDiv(-residual.count(p.size(part)), p.amount(part)));
        }
        return Math.min(most, residual.most(p.kind()));
    }

    private double cost(Pattern p) {
        return (double) cuts.kinds().get(p.kind()).cost() / cuts.grain();
    }

    private Model withCost(Model model, List<Pattern> patterns, long least, long most) {
        int row = model.rowCount();
        boolean decides = least >= most;
        Model limited = new Model();
        for (int r = 0; r < row; r++) {
            limited.row(model.lower(r), model.upper(r));
        }
        limited.row((double) least / cuts.grain(), (double) most / cuts.grain());
        for (int p = 0; p < patterns.size(); p++) {
            Model.Column c = model.columns().get(p);
            int[] rows = Arrays.copyOf(c.rows(), c.rows().length + 1);
            double[] entries = Arrays.copyOf(c.entries(), rows.length);
            rows[rows.length - 1] = row;
            entries[rows.length - 1] = cost(patterns.get(p));
            limited.column(decides ? 0 : c.cost(), c.upper(), rows, entries);
        }
        return limited;
    }

    /** The chosen patterns with cuts beyond the demand taken out. */
    static PatternPlan withoutSurplus(MergedCuts cuts, List<Pattern> patterns, long[] times) {
        int[] wanted = cuts.counts();
        PatternPlan plan = new PatternPlan(cuts);
        for (int p = 0; p < patterns.size(); p++) {
            int whole = (int) Math.min(times[p], patterns.get(p).timesWithin(wanted));
            plan.add(patterns.get(p), whole);
            patterns.get(p).takeFrom(wanted, whole);
            for (long n = whole; n < times[p]; n++) {
                Pattern trimmed = patterns.get(p).within(wanted);
                plan.add(trimmed, 1);
                trimmed.takeFrom(wanted, 1);
            }
        }
        return plan;
    }
}
