package org.runbend.optimizer.channel;

import java.util.List;

/**
 * Draws the finished edge of the channel along each loop: lines and true arcs, tangent to each other but for the mouths of
 * the pads, so that a cutter no wider than the channel reaches every place.
 */
public final class ChannelMaker {
    /** The channels, and how near they come to each other. */
    public ChannelPlan make(ChannelProblem problem) {
        List<List<ChannelPlan.Corner>> contours = problem.loops().stream()
                .map(loop -> new ChannelEdge(problem.size(), loop.pipe()).corners())
                .toList();
        ChannelRoom room = new ChannelRoom(problem);
        return new ChannelPlan(problem.size(), contours, room.leastWeb());
    }
}
