package org.runbend.optimizer.mip;

import java.util.function.Predicate;

/** What every integer program asks of SCIP (SCIP reference manual, list of parameters). */
public final class ScipSettings {
    private ScipSettings() {}

    /**
     * Stops it by its nodes, never by the clock, and leaves Ctrl-C to the program: SCIP would take it for itself, end its
     * search early and let the plan go on with whatever was found.
     *
     * @param solver takes the settings as text and says whether it knows them
     * @throws IllegalStateException when it does not
     */
    public static void apply(Predicate<String> solver, long nodes) {
        if (!solver.test("limits/nodes = " + nodes + "\nmisc/catchctrlc = FALSE\n")) {
            throw new IllegalStateException("SCIP does not know its settings");
        }
    }
}
