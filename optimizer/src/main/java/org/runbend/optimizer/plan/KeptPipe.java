package org.runbend.optimizer.plan;

import java.util.List;

/**
 * A part that was already routed, as it lies in the new plan.
 *
 * @param part its number in the job file, from 0
 * @param length pipe of the plan that lies in it, mm
 * @param places the elements that do
 */
public record KeptPipe(int part, double length, List<Place> places) {
    /** Copies the list. */
    public KeptPipe {
        places = List.copyOf(places);
    }

    /**
     * An element that lies in the part, whole or partly.
     *
     * @param loop number of the loop
     * @param element number of the element
     * @param length how much of it, mm
     */
    public record Place(int loop, int element, double length) {}
}
