package org.runbend.optimizer.work;

/** Hears what long work is at. Steps of work that runs side by side may come from several threads. */
@FunctionalInterface
public interface Progress {
    /** A listener that hears nothing. */
    Progress SILENT = step -> {};

    /** Called when a step begins. */
    void step(Step step);

    /**
     * A step.
     *
     * @param what a sentence part such as "packing plates"
     * @param at which of several like steps it is, counted from 1; 0 where steps are not counted
     * @param of how many there are; 0 where steps are not counted
     */
    record Step(String what, int at, int of) {
        /** Checks that a counted step is one of its number. */
        public Step {
            if (at < 0 || at > of) {
                throw new IllegalArgumentException("step " + at + " of " + of);
            }
        }

        /** Whether it is one of several like steps. */
        public boolean isCounted() {
            return of > 0;
        }
    }
}
