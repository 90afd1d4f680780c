package org.runbend.optimizer.work;

import java.util.List;

/** Hears what long work is at. Steps of work that runs side by side may come from several threads. */
@FunctionalInterface
public interface Progress {
    /** A listener that hears nothing. */
    Progress SILENT = step -> {};

    /** Called when a step begins. */
    void step(Step step);

    /** Whether it looks at sketches; to whom does not, none are made. */
    default boolean looks() {
        return false;
    }

    /** Called with a first picture of what will come of the work, if it {@link #looks}. */
    default void sketch(Sketch sketch) {}

    /**
     * Lines on the floor that are good so far.
     *
     * @param lines each from end to end, its arcs as short lines or cut off
     */
    record Sketch(List<List<Place>> lines) {
        /** Copies the lists. */
        public Sketch {
            lines = lines.stream().map(List::copyOf).toList();
        }
    }

    /** A place on the floor, mm. */
    record Place(double x, double y) {}

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
