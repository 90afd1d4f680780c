package org.runbend.optimizer.cutting.patterns;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Require;
import org.runbend.optimizer.mip.Natives;

/**
 * Cuts assigned to stock pieces one by one in CP-SAT: the textbook model, kept to be measured against. Benches use it,
 * plans do not. One kind of stock, cost 1.
 *
 * <p>Model: x_ib cut i comes from piece b, y_b piece b is used, as many pieces as first-fit decreasing takes; y_b >=
 * y_(b+1), cut i only in pieces up to i, the material bound as a row. One worker and a fixed seed; limited by time, for a
 * bench at equal limits.
 */
public final class AssignmentModel {
    private final double seconds;

    /**
     * What the model came to.
     *
     * @param stock pieces of the best plan found, if one was found
     * @param bound no plan takes fewer, as far as proved
     */
    public record Answer(OptionalLong stock, long bound) {}

    /** A model that may take so many seconds; more than 0. */
    public AssignmentModel(double seconds) {
        Require.that(seconds > 0, "seconds (%s) must be more than 0", seconds);
        this.seconds = seconds;
    }

    /** Solves the problem; it must have one kind of stock. */
    public Answer solve(CuttingProblem problem) {
        Require.that(
                problem.stock().size() == 1,
                "the model takes 1 kind of stock, not %d",
                problem.stock().size());
        Natives.load();
        long room = problem.stock().get(0).length() - problem.endTrim() + problem.kerf();
        List<Long> cuts = cuts(problem);
        int pieces = firstFit(cuts, room);
        CpModel model = new CpModel();
        BoolVar[] used = new BoolVar[pieces];
        BoolVar[][] from = new BoolVar[cuts.size()][pieces];
        for (int b = 0; b < pieces; b++) {
            used[b] = model.newBoolVar("");
            LinearExprBuilder load = LinearExpr.newBuilder();
            for (int i = b; i < cuts.size(); i++) {
                from[i][b] = model.newBoolVar("");
                load.addTerm(from[i][b], cuts.get(i));
            }
            model.addLessOrEqual(load.addTerm(used[b], -room), 0);
            if (b > 0) {
                model.addGreaterOrEqual(used[b - 1], used[b]);
            }
        }
        for (int i = 0; i < cuts.size(); i++) {
            LinearExprBuilder once = LinearExpr.newBuilder();
            for (int b = 0; b <= Math.min(i, pieces - 1); b++) {
                once.add(from[i][b]);
            }
            model.addEquality(once, 1);
        }
        long total = cuts.stream().mapToLong(Long::longValue).sum();
        model.addGreaterOrEqual(LinearExpr.sum(used), -Math.floorDiv(-total, room));
        model.minimize(LinearExpr.sum(used));
        return run(model);
    }

    private Answer run(CpModel model) {
        CpSolver solver = new CpSolver();
        // Ctrl-C is the program's, not the solver's
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setMaxTimeInSeconds(seconds)
                .setCatchSigintSignal(false);
        CpSolverStatus status = solver.solve(model);
        boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        long bound = (long) Math.ceil(solver.bestObjectiveBound() - 1e-6);
        return new Answer(
                found ? OptionalLong.of(Math.round(solver.objectiveValue())) : OptionalLong.empty(),
                Math.max(0, bound));
    }

    private static List<Long> cuts(CuttingProblem problem) {
        List<Long> cuts = new ArrayList<>();
        for (Demand d : problem.demands()) {
            for (int n = 0; n < d.count(); n++) {
                cuts.add(d.length() + problem.kerf());
            }
        }
        cuts.sort(Comparator.reverseOrder());
        return cuts;
    }

    private static int firstFit(List<Long> cuts, long room) {
        List<Long> left = new ArrayList<>();
        for (long cut : cuts) {
            int b = 0;
            while (b < left.size() && left.get(b) < cut) {
                b++;
            }
            if (b == left.size()) {
                left.add(room);
            }
            left.set(b, left.get(b) - cut);
        }
        return left.size();
    }
}
