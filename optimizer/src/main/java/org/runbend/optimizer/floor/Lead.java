package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * The way from a hole to a node of the lattice, or none where the hole lies on the node.
 *
 * @param corners the hole, corners to be rounded, the node; the node alone where there is no way
 */
public record Lead(List<Point> corners) {
    /** Copies the list. */
    public Lead {
        corners = List.copyOf(corners);
        if (corners.isEmpty()) {
            throw new IllegalArgumentException("a lead ends at a node");
        }
    }

    /** Whether the hole lies on the node. */
    public boolean isNone() {
        return corners.size() == 1;
    }

    /**
     * Both ways of a loop.
     *
     * @param flow from the hole of the flow to the first node
     * @param back from the hole of the return to the last node
     */
    public record Pair(Lead flow, Lead back) {}
}
