package org.runbend.optimizer.mip;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.List;
import java.util.Optional;

/** Solves a {@link Model} as a linear program with GLOP. Its figures are floating point: hints, never proofs. */
public final class LinearSolver {
    /** Values of the columns and duals of the rows. */
    public static final class Answer {
        private final double[] values;
        private final double[] duals;

        public Answer(double[] values, double[] duals) {
            this.values = values;
            this.duals = duals;
        }

        public double[] values() {
            return values;
        }

        public double[] duals() {
            return duals;
        }
    }

    /** The optimum, or empty when there is none or the solver gave up. */
    public Optional<Answer> solve(Model model) {
        Natives.load();
        MPSolver solver = MPSolver.createSolver("GLOP");
        try {
            MPConstraint[] rows = rows(solver, model);
            MPVariable[] columns = columns(solver, model, rows);
            if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
                return Optional.empty();
            }
            double[] values = new double[columns.length];
            for (int c = 0; c < values.length; c++) {
                values[c] = columns[c].solutionValue();
            }
            double[] duals = new double[rows.length];
            for (int r = 0; r < duals.length; r++) {
                duals[r] = rows[r].dualValue();
            }
            return Optional.of(new Answer(values, duals));
        } finally {
            solver.delete();
        }
    }

    private static MPConstraint[] rows(MPSolver solver, Model model) {
        MPConstraint[] rows = new MPConstraint[model.rowCount()];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = solver.makeConstraint(model.lower(r), model.upper(r));
        }
        return rows;
    }

    private static MPVariable[] columns(MPSolver solver, Model model, MPConstraint[] rows) {
        MPObjective objective = solver.objective();
        List<Model.Column> columns = model.columns();
        MPVariable[] made = new MPVariable[columns.size()];
        for (int c = 0; c < made.length; c++) {
            Model.Column column = columns.get(c);
            made[c] = solver.makeNumVar(0, column.upper(), "");
            objective.setCoefficient(made[c], column.cost());
            for (int k = 0; k < column.rows().length; k++) {
                rows[column.rows()[k]].setCoefficient(made[c], column.entries()[k]);
            }
        }
        objective.setMinimization();
        return made;
    }
}
