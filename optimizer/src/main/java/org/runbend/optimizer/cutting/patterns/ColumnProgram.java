package org.runbend.optimizer.cutting.patterns;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Natives;

/**
 * Solves a {@link Model} as a linear program that grows: after each solve new columns are asked for, and the next one
 * starts from the last basis (GLOP). Its figures are floating point: hints, never proofs.
 */
final class ColumnProgram {
    /** Looks at value and duals and names new columns; none ends the program. */
    @FunctionalInterface
    interface Pricer {
        List<Model.Column> price(double value, double[] duals);
    }

    /** The last optimum: its value, the values of all columns and the duals. */
    static final class Answer {
        private final double value;
        private final double[] values;
        private final double[] duals;

        Answer(double value, double[] values, double[] duals) {
            this.value = value;
            this.values = values;
            this.duals = duals;
        }

        double value() {
            return value;
        }

        double[] values() {
            return values;
        }

        double[] duals() {
            return duals;
        }
    }

    /** The last optimum before the solver gave up or the pricer had no more; empty when there was none at all. */
    Optional<Answer> solve(Model model, Pricer pricer) {
        Natives.load();
        MPSolver solver = MPSolver.createSolver("GLOP");
        try {
            solver.setSolverSpecificParametersAsString("use_preprocessing: false");
            MPConstraint[] rows = new MPConstraint[model.rowCount()];
            for (int r = 0; r < rows.length; r++) {
                rows[r] = solver.makeConstraint(model.lower(r), model.upper(r));
            }
            List<MPVariable> columns = new ArrayList<>();
            model.columns().forEach(c -> columns.add(make(solver, c, rows)));
            solver.objective().setMinimization();
            Answer last = null;
            List<Model.Column> more;
            do {
                if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
                    break;
                }
                last = answer(solver, rows, columns);
                more = pricer.price(last.value(), last.duals());
                more.forEach(c -> columns.add(make(solver, c, rows)));
            } while (!more.isEmpty());
            return Optional.ofNullable(last);
        } finally {
            solver.delete();
        }
    }

    private static Answer answer(MPSolver solver, MPConstraint[] rows, List<MPVariable> columns) {
        double[] values = new double[columns.size()];
        for (int c = 0; c < values.length; c++) {
            values[c] = columns.get(c).solutionValue();
        }
        double[] duals = new double[rows.length];
        for (int r = 0; r < duals.length; r++) {
            duals[r] = rows[r].dualValue();
        }
        return new Answer(solver.objective().value(), values, duals);
    }

    private static MPVariable make(MPSolver solver, Model.Column column, MPConstraint[] rows) {
        MPObjective objective = solver.objective();
        MPVariable made = solver.makeNumVar(0, column.upper(), "");
        objective.setCoefficient(made, column.cost());
        for (int k = 0; k < column.rows().length; k++) {
            rows[column.rows()[k]].setCoefficient(made, column.entries()[k]);
        }
        return made;
    }
}
