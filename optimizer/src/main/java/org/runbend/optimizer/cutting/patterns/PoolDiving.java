package org.runbend.optimizer.cutting.patterns;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.runbend.optimizer.mip.Natives;
import org.runbend.optimizer.mip.Watch;

/**
 * Dives for a plan of at most a given cost over a fixed pool of patterns: the linear program of what is left is solved,
 * whole times are fixed, else the greatest fraction once, and so on; where that leads to nothing, the last choice is
 * barred. After so many solves it begins anew with fractions shaken by a fixed seed, and ends when all are used up.
 */
final class PoolDiving {
    /** Fractions under this are none: chosen, above the noise of the linear program. */
    private static final double NOISE = 1e-6;
    /** A fraction over this is rounded up: chosen, not measured. */
    private static final double ALMOST = 0.95;
    /** Any number would do; chosen. */
    private static final long SEED = 20_260_101L;

    private final MergedCuts cuts;
    private final int solves;
    private final int restarts;
    private final Watch watch;

    /** Begins {@code restarts} times with at most {@code solves} programs each. */
    PoolDiving(MergedCuts cuts, int solves, int restarts, Watch watch) {
        this.cuts = cuts;
        this.solves = solves;
        this.restarts = restarts;
        this.watch = watch;
    }

    /** A plan of at most {@code most}, or empty when the dives met none. */
    Optional<PatternPlan> dive(List<Pattern> pool, ResidualProblem residual, long most) {
        Natives.load();
        MPSolver solver = MPSolver.createSolver("GLOP");
        try {
            solver.setSolverSpecificParametersAsString("use_preprocessing: false");
            MPConstraint[] rows = rows(solver, residual);
            MPVariable[] columns = columns(solver, pool, rows);
            PatternPlan found = null;
            for (int r = 0; r < restarts && found == null && !watch.asksForEnd(); r++) {
                Dive dive = new Dive(pool, residual, most, new Random(SEED + r), r > 0);
                List<Step> open = new ArrayList<>(List.of(new Step(new PatternPlan(cuts), List.of())));
                for (int n = 0; n < solves && !open.isEmpty() && dive.found == null && !watch.asksForEnd(); n++) {
                    Step step = open.remove(open.size() - 1);
                    double[] values = dive.setUp(step, rows, columns) ? solved(solver, columns) : new double[0];
                    open.addAll(dive.next(step, values));
                }
                found = dive.found;
            }
            return Optional.ofNullable(found);
        } finally {
            solver.delete();
        }
    }

    private static double[] solved(MPSolver solver, MPVariable[] columns) {
        if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
            return new double[0];
        }
        double[] values = new double[columns.length + 1];
        for (int c = 0; c < columns.length; c++) {
            values[c] = columns[c].solutionValue();
        }
        values[columns.length] = solver.objective().value();
        return values;
    }

    private MPConstraint[] rows(MPSolver solver, ResidualProblem residual) {
        MPConstraint[] rows = new MPConstraint[cuts.sizeCount() + cuts.kinds().size()];
        for (int i = 0; i < cuts.sizeCount(); i++) {
            rows[i] = solver.makeConstraint(residual.count(i), Double.POSITIVE_INFINITY);
        }
        for (int k = 0; k < cuts.kinds().size(); k++) {
            rows[cuts.sizeCount() + k] = solver.makeConstraint((double) residual.least(k), (double) residual.most(k));
        }
        return rows;
    }

    private MPVariable[] columns(MPSolver solver, List<Pattern> pool, MPConstraint[] rows) {
        MPVariable[] columns = new MPVariable[pool.size()];
        for (int c = 0; c < columns.length; c++) {
            Pattern p = pool.get(c);
            columns[c] = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
            solver.objective()
                    .setCoefficient(
                            columns[c], (double) cuts.kinds().get(p.kind()).cost() / cuts.grain());
            for (int part = 0; part < p.parts(); part++) {
                rows[p.size(part)].setCoefficient(columns[c], p.amount(part));
            }
            rows[cuts.sizeCount() + p.kind()].setCoefficient(columns[c], 1);
        }
        solver.objective().setMinimization();
        return columns;
    }

    /** Patterns fixed on the way and those barred from here on. */
    private record Step(PatternPlan fixed, List<Integer> barred) {}

    private final class Dive {
        private final List<Pattern> pool;
        private final ResidualProblem root;
        private final long most;
        private final Random random;
        private final boolean shakes;
        private PatternPlan found;

        Dive(List<Pattern> pool, ResidualProblem root, long most, Random random, boolean shakes) {
            this.random = random;
            this.shakes = shakes;
            this.pool = pool;
            this.root = root;
            this.most = most;
        }

        /** Sets the program to what a step leaves; false when nothing is left to solve. */
        private boolean setUp(Step step, MPConstraint[] rows, MPVariable[] columns) {
            ResidualProblem rest = root.without(step.fixed());
            if (rest.total() == 0) {
                return false;
            }
            int[] counts = rest.counts();
            for (int i = 0; i < counts.length; i++) {
                rows[i].setBounds(counts[i], Double.POSITIVE_INFINITY);
            }
            for (int k = 0; k < cuts.kinds().size(); k++) {
                rows[counts.length + k].setBounds((double) rest.least(k), (double) rest.most(k));
            }
            for (int c = 0; c < columns.length; c++) {
                boolean useful = false;
                Pattern p = pool.get(c);
                for (int part = 0; part < p.parts() && !useful; part++) {
                    useful = counts[p.size(part)] > 0;
                }
                columns[c].setUb(useful ? Double.POSITIVE_INFINITY : 0);
            }
            step.barred().forEach(c -> columns[c].setUb(0));
            return true;
        }

        /** The ways on from a solved step, the most promising last. */
        List<Step> next(Step step, double[] values) {
            ResidualProblem rest = root.without(step.fixed());
            if (rest.total() == 0) {
                if (step.fixed().cost() <= most) {
                    found = step.fixed();
                }
                return List.of();
            }
            if (values.length == 0
                    || values[pool.size()] * cuts.grain() > most - step.fixed().cost() + 1e-4 * cuts.grain()) {
                return List.of();
            }
            List<Integer> order = order(values);
            PatternPlan fixed = step.fixed().copy();
            boolean whole = fixWhole(fixed, rest, values);
            if (whole) {
                return List.of(new Step(fixed, step.barred()));
            }
            return order.isEmpty() ? List.of() : branches(step, rest, order.get(0));
        }

        private boolean fixWhole(PatternPlan fixed, ResidualProblem rest, double[] values) {
            int[] counts = rest.counts();
            boolean any = false;
            for (int c = 0; c < pool.size(); c++) {
                int times = Math.min(
                        (int) Math.floor(values[c] + 1 - ALMOST), pool.get(c).timesWithin(counts));
                if (times > 0) {
                    fixed.add(pool.get(c), times);
                    pool.get(c).takeFrom(counts, times);
                    any = true;
                }
            }
            return any;
        }

        private List<Step> branches(Step step, ResidualProblem rest, int chosen) {
            List<Integer> barred = new ArrayList<>(step.barred());
            barred.add(chosen);
            PatternPlan fixed = step.fixed().copy();
            fixed.add(pool.get(chosen).within(rest.counts()), 1);
            return List.of(new Step(step.fixed(), barred), new Step(fixed, step.barred()));
        }

        private List<Integer> order(double[] values) {
            List<Integer> order = new ArrayList<>();
            for (int c = 0; c < pool.size(); c++) {
                if (values[c] > NOISE) {
                    order.add(c);
                }
            }
            double[] keys = values.clone();
            for (int c = 0; c < keys.length && shakes; c++) {
                keys[c] *= 0.5 + random.nextDouble();
            }
            order.sort(Comparator.comparingDouble((Integer c) -> -keys[c]).thenComparingInt(c -> c));
            return order;
        }
    }
}
