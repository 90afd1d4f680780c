package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.BlockGraph;

/**
 * Chooses the order in which nodes are decided so that few links are open at a time.
 *
 * <p>Candidates are the eight plain sweeps and greedy orders from the corners and from evenly spread nodes; the one of
 * least sum of 2.5 to the power of the open links wins, since the number of states grows about so. Among equals the one
 * that meets the port first wins.
 */
final class NodeOrder {
    /** States grow so much with each open link, when orders are compared: chosen, not measured. */
    private static final double GROWTH = 2.5;

    /** Places that an order may begin from: chosen, not measured. */
    private static final int SPREAD_STARTS = 32;

    /** Orders handed on: chosen, not measured. */
    private static final int MOST_ORDERS = 8;

    /** An order may make so many times the states of the best and still be tried: chosen, not measured. */
    private static final double HARDLY_WORSE = 4;

    private final BlockGraph blockGraph;
    private final int[] portNodes;
    private final List<Weighed> orders = new ArrayList<>();

    private record Weighed(List<Integer> order, double weight, long delay) {}

    NodeOrder(BlockGraph blockGraph, int[] portNodes) {
        this.blockGraph = blockGraph;
        this.portNodes = portNodes.clone();
    }

    /** Local node numbers in the chosen order, and in others that are hardly worse; the best comes first. */
    List<int[]> choose() {
        List<int[]> sweeps = sweeps();
        sweeps.forEach(this::consider);
        for (int[] sweep : sweeps) {
            consider(greedy(sweep[0]));
        }
        int step = Math.max(1, blockGraph.size() / SPREAD_STARTS);
        for (int start = 0; start < blockGraph.size(); start += step) {
            consider(greedy(start));
        }
        orders.sort(Comparator.comparingDouble(Weighed::weight).thenComparingLong(Weighed::delay));
        double most = HARDLY_WORSE * orders.get(0).weight();
        return orders.stream()
                .filter(weighed -> weighed.weight() <= most)
                .map(Weighed::order)
                .distinct()
                .limit(MOST_ORDERS)
                .map(order -> order.stream().mapToInt(Integer::intValue).toArray())
                .toList();
    }

    private List<int[]> sweeps() {
        List<int[]> sweeps = new ArrayList<>();
        for (int signs = 0; signs < 4; signs++) {
            int sx = (signs & 1) == 0 ? 1 : -1;
            int sy = (signs & 2) == 0 ? 1 : -1;
            Comparator<Integer> byColumn = Comparator.comparingInt(i -> sx * blockGraph.column(i));
            Comparator<Integer> byRow = Comparator.comparingInt(i -> sy * blockGraph.row(i));
            sweeps.add(sorted(byColumn.thenComparing(byRow)));
            sweeps.add(sorted(byRow.thenComparing(byColumn)));
        }
        return sweeps;
    }

    private int[] sorted(Comparator<Integer> by) {
        return IntStream.range(0, blockGraph.size())
                .boxed()
                .sorted(by)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** From a start on, always the frontier node that opens fewest links; among equals the one that waits longest. */
    private int[] greedy(int start) {
        int n = blockGraph.size();
        int[] order = new int[n];
        boolean[] done = new boolean[n];
        boolean[] waiting = new boolean[n];
        List<Integer> queue = new ArrayList<>(List.of(start));
        waiting[start] = true;
        for (int t = 0; t < n; t++) {
            int pick = queue.remove(leastOpening(queue, done));
            order[t] = pick;
            done[pick] = true;
            for (int h = 0; h < 4; h++) {
                int next = blockGraph.neighbour(pick, h);
                if (next >= 0 && !waiting[next]) {
                    waiting[next] = true;
                    queue.add(next);
                }
            }
        }
        return order;
    }

    private int leastOpening(List<Integer> queue, boolean[] done) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int q = 0; q < queue.size(); q++) {
            int opening = opening(queue.get(q), done);
            if (opening < least) {
                least = opening;
                best = q;
            }
        }
        return best;
    }

    /** Links that a node opens less those it closes. */
    private int opening(int i, boolean[] done) {
        int opening = 0;
        for (int h = 0; h < 4; h++) {
            int next = blockGraph.neighbour(i, h);
            if (next >= 0) {
                opening += done[next] ? -1 : 1;
            }
        }
        return opening;
    }

    private void consider(int[] order) {
        boolean[] done = new boolean[blockGraph.size()];
        int open = 0;
        double weight = 0;
        for (int i : order) {
            open += opening(i, done);
            done[i] = true;
            weight += power(open);
        }
        orders.add(new Weighed(IntStream.of(order).boxed().toList(), weight, delay(order)));
    }

    private static double power(int open) {
        double power = 1;
        for (int i = 0; i < open; i++) {
            power *= GROWTH;
        }
        return power;
    }

    private long delay(int[] order) {
        int[] position = new int[order.length];
        for (int t = 0; t < order.length; t++) {
            position[order[t]] = t;
        }
        long delay = 0;
        for (int node : portNodes) {
            delay += position[node];
        }
        return delay;
    }
}
