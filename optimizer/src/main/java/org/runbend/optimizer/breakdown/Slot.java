package org.runbend.optimizer.breakdown;

import org.runbend.optimizer.job.Point;

/**
 * Where the groove is deepened so that the pipe can turn into its hole. Sizes in mm.
 *
 * @param from the axis of the hole
 * @param to where the pipe begins to dip
 * @param width across
 */
public record Slot(Point from, Point to, double width) {
    /** Length from the hole's axis. */
    public double length() {
        return from.distance(to);
    }
}
