package org.runbend.optimizer.channel;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * Channels as they are cut.
 *
 * @param size their sizes
 * @param contours the finished edge of each loop's channel, closed, anticlockwise
 * @param leastWeb least material between two channels or two parts of one, mm; infinite if nothing lies within 350 mm
 */
public record ChannelPlan(ChannelSize size, List<List<Corner>> contours, double leastWeb) {
    /** Copies the lists. */
    public ChannelPlan {
        contours = contours.stream().map(List::copyOf).toList();
    }

    /** The fewest passes that clear them. */
    public Passes passes() {
        return Passes.of(size);
    }

    /**
     * A corner of a contour and the way on from it.
     *
     * @param at where, mm
     * @param bulge tangent of a quarter of the sweep of the arc to the next corner, anticlockwise positive; 0 for a line
     */
    public record Corner(Point at, double bulge) {}
}
