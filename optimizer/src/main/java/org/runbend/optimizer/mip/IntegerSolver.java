package org.runbend.optimizer.mip;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.List;

/**
 * Solves a {@link Model} in whole numbers with SCIP, one thread, stopped by its node count and never by the clock.
 *
 * <p>Optimality and infeasibility rest on the solver's tolerance of 1e-6.
 */
public final class IntegerSolver {
    private final int nodes;
    private final Watch watch;

    /** A solver that stops after so many nodes. */
    IntegerSolver(int nodes) {
        this(nodes, Watch.NONE);
    }

    /** A solver that stops after so many nodes, or when the watch asks for an end. */
    public IntegerSolver(int nodes, Watch watch) {
        this.nodes = nodes;
        this.watch = watch;
    }

    /** How a solve ended. */
    public enum Status {
        OPTIMAL,
        FEASIBLE,
        INFEASIBLE,
        UNKNOWN
    }

    /** The status and, for the first two, the value of each column. */
    public static final class Answer {
        private final Status status;
        private final long[] values;

        public Answer(Status status, long[] values) {
            this.status = status;
            this.values = values;
        }

        public Status status() {
            return status;
        }

        public long[] values() {
            return values;
        }

        public boolean hasValues() {
            return status == Status.OPTIMAL || status == Status.FEASIBLE;
        }
    }

    /** The best whole-number answer found. */
    public Answer solve(Model model) {
        Natives.load();
        MPSolver solver = MPSolver.createSolver("SCIP");
        MPSolverParameters parameters = new MPSolverParameters();
        try {
            MPVariable[] columns = build(solver, model);
            ScipSettings.apply(solver::setSolverSpecificParametersAsString, nodes);
            parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
            Status status = status(watched(solver, parameters));
            long[] values = new long[columns.length];
            Answer answer = new Answer(status, values);
            for (int c = 0; c < values.length && answer.hasValues(); c++) {
                values[c] = Math.round(columns[c].solutionValue());
            }
            return answer;
        } finally {
            parameters.delete();
            solver.delete();
        }
    }

    private MPSolver.ResultStatus watched(MPSolver solver, MPSolverParameters parameters) {
        return watch == Watch.NONE
                ? solver.solve(parameters)
                : InterruptWatch.solve(watch::asksForEnd, solver::interruptSolve, () -> solver.solve(parameters));
    }

    private static Status status(MPSolver.ResultStatus status) {
        if (status == MPSolver.ResultStatus.OPTIMAL) {
            return Status.OPTIMAL;
        }
        if (status == MPSolver.ResultStatus.FEASIBLE) {
            return Status.FEASIBLE;
        }
        return status == MPSolver.ResultStatus.INFEASIBLE ? Status.INFEASIBLE : Status.UNKNOWN;
    }

    private static MPVariable[] build(MPSolver solver, Model model) {
        MPConstraint[] rows = new MPConstraint[model.rowCount()];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = solver.makeConstraint(model.lower(r), model.upper(r));
        }
        MPObjective objective = solver.objective();
        List<Model.Column> columns = model.columns();
        MPVariable[] made = new MPVariable[columns.size()];
        for (int c = 0; c < made.length; c++) {
            Model.Column column = columns.get(c);
            made[c] = solver.makeVar(0, column.upper(), column.whole(), "");
            objective.setCoefficient(made[c], column.cost());
            for (int k = 0; k < column.rows().length; k++) {
                rows[column.rows()[k]].setCoefficient(made[c], column.entries()[k]);
            }
        }
        objective.setMinimization();
        return made;
    }
}
