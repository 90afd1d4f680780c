package org.runbend.optimizer.cutting;

import org.runbend.optimizer.natives.SolverLibrary;

/** Loads the solver's native libraries. */
final class Natives {
    private Natives() {}

    /** To be called before any solver object is made. */
    static void load() {
        SolverLibrary.load();
    }
}
