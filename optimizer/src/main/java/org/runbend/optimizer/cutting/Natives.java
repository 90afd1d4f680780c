package org.runbend.optimizer.cutting;

import com.google.ortools.Loader;

/** Loads the solver's native library; the loader itself keeps it to once. */
final class Natives {
    private Natives() {}

    /** To be called before any solver object is made. */
    static void load() {
        Loader.loadNativeLibraries();
    }
}
