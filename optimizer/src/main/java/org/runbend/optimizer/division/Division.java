package org.runbend.optimizer.division;

import java.util.List;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * A lattice divided into parts with the loop of each.
 *
 * @param problem which of the problems offered it answers, from 0
 * @param parts nodes of each part in ascending order; no node is in two
 * @param loops the loop of each part, its nodes numbered as in the whole lattice; its bounds are those of its part
 */
public record Division(int problem, List<List<Integer>> parts, List<LoopSolution> loops) {
    /** Checks that each part has its loop, and copies the lists. */
    public Division {
        parts = parts.stream().map(List::copyOf).toList();
        loops = List.copyOf(loops);
        if (parts.size() != loops.size()) {
            throw new IllegalArgumentException(parts.size() + " parts, " + loops.size() + " loops");
        }
    }
}
