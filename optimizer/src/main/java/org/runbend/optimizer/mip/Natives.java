package org.runbend.optimizer.mip;

import org.runbend.optimizer.natives.SolverLibrary;

/** Loads the solver's native libraries. */
public final class Natives {
    private Natives() {}

    /** To be called before any solver object is made. */
    public static void load() {
        SolverLibrary.load();
    }
}
