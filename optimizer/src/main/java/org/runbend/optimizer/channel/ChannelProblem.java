package org.runbend.optimizer.channel;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Point;

/**
 * What channels are asked for.
 *
 * @param size their sizes
 * @param outline corners of the floor in order, mm
 * @param loops one or more loops
 */
public record ChannelProblem(ChannelSize size, List<Point> outline, List<Breakdown> loops) {
    /** Copies the lists. */
    public ChannelProblem {
        outline = List.copyOf(outline);
        loops = List.copyOf(loops);
    }
}
