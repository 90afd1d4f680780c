package org.runbend.optimizer.channel;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;

/**
 * What channels are asked for.
 *
 * @param size their sizes
 * @param loops one or more loops
 */
public record ChannelProblem(ChannelSize size, List<Breakdown> loops) {
    /** Copies the lists. */
    public ChannelProblem {
        loops = List.copyOf(loops);
    }
}
