package org.runbend.optimizer.plates;

/**
 * A part of a run that can take plates.
 *
 * @param loop index of the loop, from 0
 * @param element index of the run in the loop's breakdown, from 0
 * @param from distance of its start from the run's start, mm
 * @param to distance of its end from the run's start, mm
 */
public record PlateStretch(int loop, int element, double from, double to) {
    /** mm. */
    public double length() {
        return to - from;
    }
}
