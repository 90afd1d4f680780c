package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * Orders in which nodes fall to one side of a dividing line. The line runs from the rim at the port straight in between two lines of
 * nodes, then turns along a line across; sweeping that line away from the port's wall, round its end and back
 * on its other side gives one node after the other. The first so many of them are the part.
 *
 * <p>Other lines go round a lane: a few lines of nodes that lead from the port along the wall to the far side, which is
 * then swept towards the port. So a loop can have the far half of a floor in long runs.
 */
final class SplitOrders {
    /** Widths of lanes along walls, in places: chosen, not measured. */
    private static final int[] LANES = {2, 4, 6};

    private final LatticeGraph graph;
    private final List<PortPair> ports;

    SplitOrders(LatticeGraph graph, List<PortPair> ports) {
        this.graph = graph;
        this.ports = ports;
    }

    /** Every order of the nodes, along both axes, from both sides and both ends. */
    List<List<Integer>> all(List<Integer> nodes) {
        List<List<Integer>> orders = new ArrayList<>();
        addAlong(orders, nodes, graph::column, graph::row);
        addAlong(orders, nodes, graph::row, graph::column);
        return orders;
    }

    private void addAlong(
            List<List<Integer>> orders,
            List<Integer> nodes,
            ToIntFunction<Integer> along,
            ToIntFunction<Integer> across) {
        int[] starts = ports.stream()
                .flatMap(p -> Stream.of(p.from(), p.to()))
                .filter(nodes::contains)
                .mapToInt(across)
                .distinct()
                .sorted()
                .toArray();
        for (int start : starts) {
            for (int side : new int[] {1, -1}) {
                for (int way : new int[] {1, -1}) {
                    for (int jog : new int[] {1, -1}) {
                        DividingLine line = new DividingLine(along, across, start, side, way, jog);
                        orders.add(swept(nodes, line.order()));
                        addLanes(orders, nodes, line);
                    }
                }
            }
        }
    }

    /** The lane begins at the port node that lies nearest to the wall from which the line comes. */
    private void addLanes(List<List<Integer>> orders, List<Integer> nodes, DividingLine line) {
        int wall = ports.stream()
                .flatMap(p -> Stream.of(p.from(), p.to()))
                .filter(n -> line.across.applyAsInt(n) == line.start - (line.side > 0 ? 0 : 1))
                .mapToInt(n -> line.way * line.along.applyAsInt(n))
                .min()
                .orElse(Integer.MAX_VALUE);
        for (int lane : LANES) {
            if (wall < Integer.MAX_VALUE) {
                orders.add(swept(nodes, line.laneOrder(wall, lane)));
            }
        }
    }

    private static List<Integer> swept(List<Integer> nodes, Comparator<Integer> by) {
        List<Integer> order = new ArrayList<>(nodes);
        order.sort(by.thenComparingInt(n -> n));
        return order;
    }

    /**
     * A dividing line.
     *
     * @param along coordinate in the direction in which it runs in
     * @param across the other coordinate
     * @param start the first line beyond it
     * @param side 1 if the part begins with the lines from start on, -1 if with those before
     * @param way 1 if it is swept with the coordinate along, -1 if against it
     * @param jog 1 if an unfinished line is begun at the low end, -1 if at the high end
     */
    private record DividingLine(
            ToIntFunction<Integer> along, ToIntFunction<Integer> across, int start, int side, int way, int jog) {
        Comparator<Integer> order() {
            return Comparator.comparingInt(this::half)
                    .thenComparingInt(n -> (half(n) == 0 ? way : -way) * along.applyAsInt(n))
                    .thenComparingInt(n -> jog * across.applyAsInt(n));
        }

        /** The lane from the wall on first, then the lines from the far side back. */
        Comparator<Integer> laneOrder(int wall, int lane) {
            return Comparator.comparingInt((Integer n) -> isInLane(n, wall, lane) ? 0 : 1)
                    .thenComparingInt(n -> -side * across.applyAsInt(n))
                    .thenComparingInt(n -> jog * along.applyAsInt(n));
        }

        private boolean isInLane(int node, int wall, int lane) {
            int inwards = way * along.applyAsInt(node) - wall;
            return half(node) == 0 && inwards >= 0 && inwards < lane;
        }

        private int half(int node) {
            boolean beyond = across.applyAsInt(node) >= start;
            return beyond == side > 0 ? 0 : 1;
        }
    }
}
