package org.runbend.optimizer.heat.flow;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** Finds where a function that does not fall passes 0, by the bracketing method of Brent as Hipparchus has it. */
final class Rising {
    private static final int MOST = 400;
    private static final double RELATIVE = 1e-12;
    private static final double ABSOLUTE = 1e-12;
    private static final double VALUE = 1e-12;
    private static final int ORDER = 5;

    private Rising() {}

    /** The place between two ends; the nearer end where all of it lies on one side of 0. */
    static double zero(DoubleUnaryOperator function, double low, double high) {
        if (!(function.applyAsDouble(low) < 0)) {
            return low;
        }
        if (!(function.applyAsDouble(high) > 0)) {
            return high;
        }
        return new BracketingNthOrderBrentSolver(RELATIVE, ABSOLUTE, VALUE, ORDER)
                .solve(MOST, function::applyAsDouble, low, high);
    }
}
