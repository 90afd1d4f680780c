package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Watch;

/**
 * The linear program over all patterns of a residual, by column generation (Gilmore and Gomory 1961,
 * https://doi.org/10.1287/opre.9.6.849).
 *
 * <p>Rows ask for at least the cuts left; columns take no more of a size than is left. Prices are smoothed between the
 * best so far and the program's own; only when smoothed ones find nothing the program's own decide. The bound of every
 * round is proved in whole numbers by {@link IntegerPrices}; it ends when it is as high as the program's value, lifted to
 * a sum of costs, can make it.
 */
final class ColumnGeneration {
    /** Rounds: chosen as a stop, not measured. */
    private static final int ROUNDS = 2_000;
    /** Patterns taken in at a time: chosen, not measured. */
    private static final int COLUMNS = 12;
    /** Price of leaving a cut out, in dearest stock pieces: chosen, over anything a pattern costs. */
    private static final double DETERRING = 100;
    /** What a pattern must be worth more than it costs, as a share: chosen, above the noise of doubles. */
    private static final double NOISE = 1e-7;

    private final MergedCuts cuts;
    private final PatternTable table;
    private final CostSums sums;
    private final Watch watch;
    private final double dearest;

    ColumnGeneration(MergedCuts cuts, PatternTable table, CostSums sums, Watch watch) {
        this.cuts = cuts;
        this.table = table;
        this.sums = sums;
        this.watch = watch;
        dearest = Math.max(
                1, cuts.kinds().stream().mapToLong(MergedCuts.Kind::cost).max().orElse(1));
    }

    /** Relaxes a residual, with the patterns of the pool to begin with; a bound of {@code enough} is high enough. */
    Relaxation solve(ResidualProblem residual, Collection<Pattern> pool, long enough) {
        return new Run(residual, enough, false).solve(pool);
    }

    /** As {@link #solve}, but goes on until no pattern pays: its prices leave the least slack. */
    Relaxation tighten(ResidualProblem residual, Collection<Pattern> pool) {
        return new Run(residual, Long.MAX_VALUE, true).solve(pool);
    }

    private final class Run {
        private final ResidualProblem residual;
        private final long enough;
        private final boolean toTheEnd;
        private final int[] rowOfSize;
        private final int[] rowOfKind;
        private final List<Pattern> patterns = new ArrayList<>();
        private final Set<Pattern> known = new LinkedHashSet<>();
        private int artificials;
        private double[] best;
        private double fineBound;
        private long bound;
        private int rounds;

        Run(ResidualProblem residual, long enough, boolean toTheEnd) {
            this.residual = residual;
            this.enough = enough;
            this.toTheEnd = toTheEnd;
            rowOfSize = new int[cuts.sizeCount()];
            rowOfKind = new int[cuts.kinds().size()];
        }

        Relaxation solve(Collection<Pattern> pool) {
            if (!kindsCanBeUsed()) {
                return new Relaxation(List.of(), new double[0], Long.MAX_VALUE, null);
            }
            Model model = rows();
            int[] counts = residual.counts();
            pool.stream().filter(p -> p.timesWithin(counts) > 0).forEach(this::add);
            addHomogeneous();
            patterns.forEach(p -> addTo(model, column(p)));
            Optional<ColumnProgram.Answer> answer = new ColumnProgram().solve(model, this::price);
            double[] times = answer.map(a -> withoutArtificials(a.values())).orElse(new double[0]);
            List<Pattern> priced = times.length == 0 ? List.of() : patterns.subList(0, times.length);
            return new Relaxation(List.copyOf(priced), times, bound, best);
        }

        /** False when a kind must be used that no cut left fits into. */
        private boolean kindsCanBeUsed() {
            for (int k = 0; k < rowOfKind.length; k++) {
                if (residual.least(k) > residual.most(k)) {
                    return false;
                }
                boolean fits = false;
                for (int i = 0; i < rowOfSize.length && !fits; i++) {
                    fits = residual.count(i) > 0
                            && cuts.size(i) <= cuts.kinds().get(k).capacity();
                }
                if (!fits && residual.least(k) > 0) {
                    return false;
                }
            }
            return true;
        }

        /** Rows: sizes still wanted, then kinds with limits; a first column for each size is a cut left undone. */
        private Model rows() {
            Model model = new Model();
            Arrays.fill(rowOfSize, -1);
            Arrays.fill(rowOfKind, -1);
            for (int i = 0; i < rowOfSize.length; i++) {
                if (residual.count(i) > 0) {
                    rowOfSize[i] = model.row((double) residual.count(i), Double.POSITIVE_INFINITY);
                    model.column(DETERRING, Double.POSITIVE_INFINITY, new int[] {rowOfSize[i]}, new double[] {1});
                    artificials++;
                }
            }
            long total = residual.total();
            for (int k = 0; k < rowOfKind.length; k++) {
                if (residual.least(k) > 0 || residual.most(k) < total) {
                    rowOfKind[k] = model.row((double) residual.least(k), (double) residual.most(k));
                }
            }
            return model;
        }

        private boolean add(Pattern pattern) {
            if (residual.most(pattern.kind()) <= 0 || pattern.isEmpty() || !known.add(pattern)) {
                return false;
            }
            return patterns.add(pattern);
        }

        private void addHomogeneous() {
            for (int k = 0; k < rowOfKind.length; k++) {
                for (int i = 0; i < rowOfSize.length; i++) {
                    long most = Math.max(0, cuts.kinds().get(k).capacity()) / cuts.size(i);
                    int amount = (int) Math.min(residual.count(i), most);
                    if (amount > 0) {
                        add(new Pattern(k, new int[] {i}, new int[] {amount}));
                    }
                }
            }
        }

        private Model.Column column(Pattern p) {
            int limited = rowOfKind[p.kind()] >= 0 ? 1 : 0;
            int[] rows = new int[p.parts() + limited];
            double[] entries = new double[rows.length];
            for (int part = 0; part < p.parts(); part++) {
                rows[part] = rowOfSize[p.size(part)];
                entries[part] = p.amount(part);
            }
            if (limited > 0) {
                rows[p.parts()] = rowOfKind[p.kind()];
                entries[p.parts()] = 1;
            }
            double cost = cuts.kinds().get(p.kind()).cost() / dearest;
            return new Model.Column(cost, Double.POSITIVE_INFINITY, rows, entries, true);
        }

        private void addTo(Model model, Model.Column c) {
            model.column(c.cost(), c.upper(), c.rows(), c.entries());
        }

        private double[] withoutArtificials(double[] values) {
            return Arrays.copyOfRange(values, artificials, values.length);
        }

        /** One round: the bound of the prices, and the patterns that pay at the program's own ones. */
        private List<Model.Column> price(double value, double[] duals) {
            double[] own = new double[rowOfSize.length];
            for (int i = 0; i < own.length; i++) {
                own[i] = rowOfSize[i] < 0 ? 0 : Math.max(0, duals[rowOfSize[i]]) * dearest;
            }
            if (++rounds > ROUNDS || watch.asksForEnd() || reached(value)) {
                return List.of();
            }
            if (best != null) {
                double[] smoothed = new double[own.length];
                for (int i = 0; i < own.length; i++) {
                    smoothed[i] = (own[i] + best[i]) / 2;
                }
                List<Model.Column> columns = columns(smoothed, own, duals);
                if (!columns.isEmpty()) {
                    return reached(value) ? List.of() : columns;
                }
            }
            List<Model.Column> columns = columns(own, own, duals);
            return reached(value) ? List.of() : columns;
        }

        private boolean reached(double value) {
            if (bound == Long.MAX_VALUE) {
                return true;
            }
            if (toTheEnd) {
                return false;
            }
            long lifted = sums.lift(bound);
            return lifted >= enough || lifted >= sums.lift((long) Math.ceil((value - 1e-6) * dearest));
        }

        private List<Model.Column> columns(double[] prices, double[] own, double[] duals) {
            IntegerPrices integer = new IntegerPrices(cuts, prices, residual, table);
            List<Model.Column> columns = new ArrayList<>();
            for (int k = 0; k < rowOfKind.length; k++) {
                if (residual.most(k) <= 0) {
                    continue;
                }
                double surcharge = rowOfKind[k] < 0 ? 0 : duals[rowOfKind[k]] * dearest;
                double cost = (double) cuts.kinds().get(k).cost() - surcharge;
                PatternTable.Best found = table.best(k, floor(integer, k, cost), COLUMNS);
                integer.noteNoneAbove(k, found.noneAbove());
                for (PatternTable.Found f : found.found()) {
                    if (f.pattern().worth(own) > cost + NOISE * dearest && add(f.pattern())) {
                        columns.add(column(f.pattern()));
                    }
                }
            }
            note(integer, prices);
            return columns;
        }

        /** Patterns worth less than their stock, or than it comes to with the limit's own price, are of no use. */
        private long floor(IntegerPrices integer, int kind, double cost) {
            double share = Math.min(
                    1, cost / Math.max(1e-9, (double) cuts.kinds().get(kind).cost()));
            return (long) Math.max(0, Math.floor((double) integer.scaledCost(kind) * share * (1 - 1e-9)));
        }

        private void note(IntegerPrices integer, double[] prices) {
            double now = integer.fineBound(residual);
            bound = integer.isImpossible(residual) ? Long.MAX_VALUE : Math.max(bound, integer.bound(residual));
            if (best == null || now >= fineBound) {
                fineBound = now;
                best = prices.clone();
            }
        }
    }
}
