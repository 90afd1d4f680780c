package org.runbend.optimizer.lattice;

import java.util.List;

/**
 * What straight pieces between two corners cost: no plate reaches to their ends, and into short ones none fits.
 *
 * @param end cost of each end of a piece that passes a node straight
 * @param extra what such a piece costs more, by how many nodes it passes, from one on; nothing beyond the list; at most seven
 */
public record StraightCost(int end, List<Integer> extra) {
    /** Nothing. */
    public static final StraightCost NONE = new StraightCost(0, List.of());

    /** Checks ranges and copies the list. */
    public StraightCost {
        extra = List.copyOf(extra);
        if (end < 0 || end > 100_000 || extra.size() > 7 || extra.stream().anyMatch(e -> e < 0 || e > 100_000)) {
            throw new IllegalArgumentException(
                    "ends (" + end + ") and extras (" + extra + ", seven at most) must be 0 to 100000");
        }
    }

    /** Whether nothing costs anything. */
    public boolean isNone() {
        return end == 0 && extra.isEmpty();
    }

    /** Nodes of a piece that have to be told apart; of longer ones it is enough that they are straight. */
    public int mostCounted() {
        return extra.size();
    }

    /** What a piece that passes so many nodes costs beyond its ends. */
    public int extra(int nodes) {
        return nodes >= 1 && nodes <= extra.size() ? extra.get(nodes - 1) : 0;
    }

    /** What a piece that passes so many nodes costs in all. */
    public int of(int nodes) {
        return nodes == 0 ? 0 : 2 * end + extra(nodes);
    }
}
