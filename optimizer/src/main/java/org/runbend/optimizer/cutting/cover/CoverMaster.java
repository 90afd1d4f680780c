package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.cutting.Costs;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockUse;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.mip.IntegerSolver;
import org.runbend.optimizer.mip.LinearSolver;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Watch;

/**
 * The program with two kinds of column: ways to cut a stock piece, which make pieces, and ways to cover a stretch, which
 * need them; a piece may be trimmed by a step. Column generation gives a bound in whole numbers, and the columns then an
 * integer program for a plan.
 */
final class CoverMaster {
    /** Rounds of column generation: chosen as a stop, not measured. */
    private static final int ROUNDS = 300;

    private final CoverGrid grid;
    private final Watch watch;
    private final CoverProblem problem;
    private final double dearest;
    private final List<Column> columns = new ArrayList<>();
    private final Set<Column> known = new HashSet<>();
    private final List<Stretch> lengths;
    private final int[] sizes;
    private long bound;
    private double value = Double.POSITIVE_INFINITY;
    private double pieces;
    private double rate;

    /** A way to cut stock {@code index}, or to cover a stretch of {@code lengths.get(index)}. */
    private record Column(boolean cuts, int index, List<Integer> pieces) {}

    CoverMaster(CoverGrid grid, Watch watch) {
        this.grid = grid;
        this.watch = watch;
        problem = grid.problem();
        sizes = grid.sizes();
        dearest = Math.max(
                1, problem.stock().stream().mapToLong(Stock::cost).max().orElse(1));
        lengths = problem.stretches().stream()
                .distinct()
                .sorted(Comparator.comparingLong(Stretch::length).thenComparingLong(Stretch::least))
                .toList();
    }

    /** The bound of the best prices seen. */
    long bound() {
        return bound;
    }

    /** Cost of the last linear program, floating point: a hint. */
    double value() {
        return value;
    }

    /** What a hundredth of mm of cover costs by the last prices. */
    double rate() {
        return rate;
    }

    /** Generates columns until none pays or the bound, lifted to a sum of costs, reaches {@code enough}. */
    void generate(long enough) {
        boolean found = true;
        for (int round = 0; round < ROUNDS && found && bound < enough && !watch.asksForEnd(); round++) {
            Optional<LinearSolver.Answer> answer = new LinearSolver().solve(model(columns, true));
            if (answer.isEmpty()) {
                return;
            }
            value = cost(answer.get().values());
            found = price(answer.get().duals());
        }
    }

    /** Pieces laid in the last linear program, floating point: a hint. */
    double pieces() {
        return pieces;
    }

    private double cost(double[] values) {
        double cost = 0;
        pieces = 0;
        for (int c = 0; c < columns.size(); c++) {
            Column column = columns.get(c);
            pieces += column.cuts() ? 0 : values[c] * column.pieces().size();
            cost += column.cuts()
                    ? values[c] * problem.stock().get(column.index()).cost()
                    : 0;
        }
        double deterred = values[values.length - 1];
        return deterred > 1e-6 ? Double.POSITIVE_INFINITY : cost;
    }

    private boolean price(double[] duals) {
        double[] pi = new double[grid.most() + 1];
        for (int u = 0; u < sizes.length; u++) {
            pi[sizes[u]] = duals[u] * dearest;
        }
        double tau = duals[targetRow()] * dearest / problem.step();
        CoverDuals now = new CoverDuals(grid, pi, tau);
        long lifted = Costs.lift(problem.stock(), now.bound());
        if (lifted >= bound) {
            bound = lifted;
            rate = tau;
        }
        boolean found = false;
        for (int s = 0; s < problem.stock().size(); s++) {
            found |= add(new Column(true, s, now.cut(problem.stock().get(s)).pieces()));
        }
        for (int r = 0; r < lengths.size(); r++) {
            found |= add(new Column(false, r, now.cover(lengths.get(r)).pieces()));
        }
        return found;
    }

    private boolean add(Column c) {
        return !c.pieces().isEmpty() && known.add(c) && columns.add(c);
    }

    private int targetRow() {
        return sizes.length + problem.stock().size() + lengths.size();
    }

    /** Rows: piece sizes, stock, stretch lengths, target. The last column of a linear model is cover at a deterring price. */
    private Model model(List<Column> some, boolean linear) {
        Model model = new Model();
        for (int u = 0; u < sizes.length; u++) {
            model.row(0, Double.POSITIVE_INFINITY);
        }
        for (Stock s : problem.stock()) {
            model.row(0, s.unlimited() ? Double.POSITIVE_INFINITY : (double) s.available());
        }
        for (Stretch stretch : lengths) {
            double count = problem.stretches().stream().filter(stretch::equals).count();
            model.row(stretch.least() > 0 ? count : 0, count);
        }
        model.row((double) problem.target() / problem.step(), Double.POSITIVE_INFINITY);
        some.forEach(c -> add(model, c));
        for (int u = 1; u < sizes.length; u++) {
            model.fraction(0, new int[] {u - 1, u}, new double[] {1, -1});
        }
        if (linear) {
            model.column(1, Double.POSITIVE_INFINITY, new int[] {targetRow()}, new double[] {1});
        }
        return model;
    }

    private void add(Model model, Column c) {
        int[] rows = new int[c.pieces().size() + 2];
        double[] entries = new double[rows.length];
        int used = 0;
        for (int u : c.pieces().stream().distinct().toList()) {
            rows[used] = Arrays.binarySearch(sizes, u);
            long times = c.pieces().stream().filter(v -> v == u).count();
            entries[used++] = c.cuts() ? times : -times;
        }
        rows[used] = sizes.length + (c.cuts() ? 0 : problem.stock().size()) + c.index();
        entries[used++] = 1;
        if (!c.cuts()) {
            rows[used] = targetRow();
            entries[used++] = (double) covered(c.pieces()) / problem.step();
        }
        double cost = c.cuts() ? problem.stock().get(c.index()).cost() / dearest : 0;
        model.column(cost, Double.POSITIVE_INFINITY, Arrays.copyOf(rows, used), Arrays.copyOf(entries, used));
    }

    private long covered(List<Integer> pieces) {
        long steps = pieces.stream().mapToLong(Integer::longValue).sum();
        return grid.length(steps) + (pieces.size() - 1) * problem.gap();
    }

    /** Takes over the ways of a known plan. */
    void learn(CoverSolution plan) {
        for (StockUse use : plan.stock()) {
            add(new Column(true, use.stock(), steps(use.pieces())));
        }
        for (int r = 0; r < plan.pieces().size(); r++) {
            int length = lengths.indexOf(problem.stretches().get(r));
            add(new Column(false, length, steps(plan.pieces().get(r))));
        }
    }

    private List<Integer> steps(List<Long> pieces) {
        return pieces.stream().map(p -> Math.toIntExact(p / problem.step())).toList();
    }

    /** The best plan over the columns at hand within so many nodes, or null. */
    CoverPlan plan(int nodes) {
        IntegerSolver.Answer answer = new IntegerSolver(nodes, watch).solve(model(columns, false));
        return answer.hasValues() ? laid(answer.values()) : null;
    }

    /** Deals the pieces made to the places that need them, longest to longest; what is too long is trimmed. */
    private CoverPlan laid(long[] times) {
        record Part(int where, int steps) {}
        CoverPlan plan = new CoverPlan(grid);
        List<Part> made = new ArrayList<>();
        List<Part> needed = new ArrayList<>();
        int[] nextOf = new int[lengths.size()];
        for (int c = 0; c < columns.size(); c++) {
            Column column = columns.get(c);
            for (long n = 0; n < times[c]; n++) {
                int where =
                        column.cuts() ? plan.open(column.index()) : stretch(column.index(), nextOf[column.index()]++);
                column.pieces().forEach(u -> (column.cuts() ? made : needed).add(new Part(where, u)));
            }
        }
        made.sort(Comparator.comparingInt(p -> -p.steps()));
        needed.sort(Comparator.comparingInt(p -> -p.steps()));
        for (int p = 0; p < needed.size(); p++) {
            if (p >= made.size() || made.get(p).steps() < needed.get(p).steps()) {
                return null;
            }
            plan.lay(needed.get(p).where(), made.get(p).where(), needed.get(p).steps());
        }
        return plan;
    }

    /** Index of the n-th stretch of a length. */
    private int stretch(int length, int n) {
        List<Stretch> all = problem.stretches();
        int seen = 0;
        for (int r = 0; r < all.size(); r++) {
            if (all.get(r).equals(lengths.get(length)) && seen++ == n) {
                return r;
            }
        }
        throw new IllegalStateException("more covers than stretches of length " + lengths.get(length));
    }
}
