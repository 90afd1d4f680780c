package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.List;

/**
 * Parts split off so far and what is left to be divided.
 *
 * @param parts nodes of each part, ascending
 * @param heated heated nodes that loops can serve in each part
 * @param rest nodes left, ascending; empty when all is divided
 * @param cost what the parts cost at a glance
 * @param restCost what the rest would cost as one part
 * @param border links that the splits part
 */
record Split(
        List<List<Integer>> parts, List<Integer> heated, List<Integer> rest, long cost, long restCost, int border) {
    Split {
        parts = List.copyOf(parts);
        heated = List.copyOf(heated);
        rest = List.copyOf(rest);
    }

    static Split whole(List<Integer> nodes) {
        return new Split(List.of(), List.of(), nodes, 0, 0, 0);
    }

    /** With one part more. */
    Split with(PartWorth part, List<Integer> nodes, List<Integer> left, long leftCost, int links) {
        List<List<Integer>> all = new ArrayList<>(parts);
        all.add(nodes);
        List<Integer> counts = new ArrayList<>(heated);
        counts.add(part.heated());
        return new Split(all, counts, left, cost + part.cost(), leftCost, border + links);
    }

    long total() {
        return cost + restCost;
    }
}
