package org.runbend.optimizer.laying;

/** Hears what the planner is at. */
@FunctionalInterface
public interface Progress {
    /** A listener that hears nothing. */
    Progress SILENT = step -> {};

    /** Called when a step begins; the text is a sentence part such as "packing plates". */
    void step(String what);
}
