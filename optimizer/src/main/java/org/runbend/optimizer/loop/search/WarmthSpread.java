package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * How far warmth would differ over a floor with a loop on its lattice. Coolant cools evenly on its way, so the warmth of
 * pipe is its place along the loop: 1 where the flow comes in, 0 where the return leaves. A place on straight pipe is half
 * as warm as its own pipe and half as the mean of the parallel pipes one spacing beside it. The unevenness is the standard
 * deviation of all places: 0 where flow lies beside return everywhere.
 *
 * <p>Places are the nodes that pipe passes straight on; bends are quarter circles of half a spacing.
 */
final class WarmthSpread {
    /** Length of a bend in spacings; derived: a quarter circle of half a spacing. */
    private static final double BEND = Math.PI / 4;

    private final LatticeGraph graph;
    private final int left;
    private final int low;
    private final int width;
    private final int[] nodeAt;
    private final double[] before;
    private final double[] after;
    private final int[] legs;

    WarmthSpread(LatticeGraph graph) {
        this.graph = graph;
        int n = graph.size();
        int[] columns = new int[n];
        int[] rows = new int[n];
        for (int node = 0; node < n; node++) {
            columns[node] = graph.column(node);
            rows[node] = graph.row(node);
        }
        left = Arrays.stream(columns).min().orElse(0) - 1;
        low = Arrays.stream(rows).min().orElse(0) - 1;
        width = Arrays.stream(columns).max().orElse(0) - left + 2;
        nodeAt = new int[width * (Arrays.stream(rows).max().orElse(0) - low + 2)];
        Arrays.fill(nodeAt, -1);
        for (int node = 0; node < n; node++) {
            nodeAt[cell(node)] = node;
        }
        before = new double[n];
        after = new double[n];
        legs = new int[n];
    }

    private int cell(int node) {
        return (graph.row(node) - low) * width + graph.column(node) - left;
    }

    /** The unevenness of a loop, its nodes in order of flow; from 0. */
    double of(List<Integer> cycle) {
        Arrays.fill(legs, 0);
        double length = pass(cycle);
        double weights = 0;
        double sum = 0;
        double squares = 0;
        for (int node : cycle) {
            double weight = isBend(node) ? 0 : Integer.bitCount(legs[node]) / 2.0;
            if (weight > 0) {
                double warmth = 1 - place(node) / length;
                weights += weight;
                sum += weight * warmth;
                squares += weight * warmth * warmth;
            }
        }
        double mean = weights > 0 ? sum / weights : 0;
        return weights > 0 ? Math.sqrt(Math.max(0, squares / weights - mean * mean)) : 0;
    }

    /** Notes where along the loop each node lies, at both ends of its bend; the whole length in spacings. */
    private double pass(List<Integer> cycle) {
        double way = 0;
        for (int k = 0; k < cycle.size(); k++) {
            int node = cycle.get(k);
            if (k > 0) {
                legs[node] |= 1 << graph.headingTo(node, cycle.get(k - 1)).index();
            }
            if (k + 1 < cycle.size()) {
                legs[node] |= 1 << graph.headingTo(node, cycle.get(k + 1)).index();
            }
            boolean corner = isBend(node);
            double half = corner ? 0.5 : 0;
            before[node] = way + (k > 0 ? 1 : 0) - half;
            after[node] = before[node] + (corner ? BEND : 0);
            way = after[node] - half;
        }
        return way;
    }

    /** Whether pipe bends there; it ends at the port with one leg. */
    private boolean isBend(int node) {
        return Integer.bitCount(legs[node]) == 2 && Frontier.isCorner(legs[node]);
    }

    /** How far along the loop a place is in effect: half its own pipe, half the mean of those beside it. */
    private double place(int node) {
        boolean flat = (legs[node] & 5) != 0;
        int side = flat ? width : 1;
        double own = (before[node] + after[node]) / 2;
        double beside = 0;
        int count = 0;
        for (int sign = -1; sign <= 1; sign += 2) {
            int other = nodeAt[cell(node) + sign * side];
            int parallel = other < 0 ? 0 : legs[other] & (flat ? 5 : 10);
            if (parallel != 0) {
                beside += legs[other] == parallel ? (before[other] + after[other]) / 2 : end(other, parallel);
                count++;
            }
        }
        return count == 0 ? own : (own + beside / count) / 2;
    }

    /** Where the straight pipe at that leg of a corner begins or ends. */
    private double end(int node, int leg) {
        int next = graph.neighbour(node, Heading.ofIndex(Integer.numberOfTrailingZeros(leg)));
        return before[next] > before[node] ? after[node] : before[node];
    }
}
