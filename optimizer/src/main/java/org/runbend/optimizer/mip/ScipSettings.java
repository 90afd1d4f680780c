package org.runbend.optimizer.mip;

import com.google.ortools.linearsolver.MPSolver;

/** What every integer program asks of SCIP (SCIP reference manual, list of parameters). */
public final class ScipSettings {
    private ScipSettings() {}

    /**
     * Stops it by its nodes, never by the clock, and leaves Ctrl-C to the program: SCIP would take it for itself, end its
     * search early and let the plan go on with whatever was found.
     *
     * @throws IllegalStateException when this SCIP does not know one of them
     */
    public static void apply(MPSolver solver, long nodes) {
        if (!solver.setSolverSpecificParametersAsString("limits/nodes = " + nodes + "\nmisc/catchctrlc = FALSE\n")) {
            throw new IllegalStateException("SCIP refuses its settings");
        }
    }
}
