package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * Ways to divide a lattice into parts of nearly equal number of heated nodes, each with its own port pair; those that look
 * cheapest first. One part is split off after the other; after each only the cheapest splits go on.
 *
 * <p>Work: for each split about 16 orders a line of port nodes, a few sizes each, one look for blocks a size.
 */
final class Splitting {
    /** Beginnings of a division that go on: chosen, not measured. */
    private static final int MOST_GOING_ON = 10;
    /** The same on lattices of so many nodes; chosen, not measured. */
    private static final int FEW_GOING_ON = 3;

    /** Such a lattice has so many places: chosen, not measured. */
    private static final int VAST = 1_500;
    /**
     * Share by which a part may differ from an equal one, and still keep lengths within a tenth of each other;
     * derived: 1.045 over 0.955 is 1.094.
     */
    private static final double OFF = 0.045;

    private final DivisionProblem problem;
    private final LatticeGraph graph;
    private final int target;

    Splitting(DivisionProblem problem, List<Integer> nodes) {
        this.problem = problem;
        this.graph = problem.graph();
        this.target = heated(nodes) / problem.loops();
    }

    /** The cheapest splits into all parts, at most so many. */
    List<Split> splits(List<Integer> nodes, int most) {
        List<Split> splits = List.of(Split.whole(nodes));
        for (int left = problem.loops(); left > 1; left--) {
            List<Split> next = new ArrayList<>();
            for (Split split : splits) {
                next.addAll(splitOff(split, left));
            }
            splits = left == 2 ? first(next, Comparator.comparingLong(Split::total), most) : goingOn(next);
        }
        return List.copyOf(splits);
    }

    /** The cheapest, and those with the shortest borders: a rest that looks cheap as one part may be hard to divide again. */
    private List<Split> goingOn(List<Split> splits) {
        int most = graph.size() > VAST ? FEW_GOING_ON : MOST_GOING_ON;
        Set<Split> chosen = new LinkedHashSet<>(first(splits, Comparator.comparingLong(Split::total), most));
        chosen.addAll(first(splits, Comparator.comparingInt(Split::border).thenComparingLong(Split::total), most));
        return List.copyOf(chosen);
    }

    private static List<Split> first(List<Split> splits, Comparator<Split> by, int most) {
        return splits.stream().sorted(by).limit(most).toList();
    }

    /** Links from one to the other, both ascending. */
    private int border(List<Integer> part, List<Integer> rest) {
        int links = 0;
        for (int node : part) {
            for (Heading h : Heading.values()) {
                links += Collections.binarySearch(rest, graph.neighbour(node, h)) >= 0 ? 1 : 0;
            }
        }
        return links;
    }

    private List<Split> splitOff(Split split, int left) {
        Set<List<Integer>> seen = new HashSet<>();
        List<Split> found = new ArrayList<>();
        List<PortPair> ports = problem.ports();
        for (List<Integer> order : new SplitOrders(graph, ports).all(split.rest())) {
            for (int size : sizes(order)) {
                List<Integer> part = sorted(order.subList(0, size));
                if (seen.add(part)) {
                    divide(split, part, sorted(order.subList(size, order.size())), left)
                            .ifPresent(found::add);
                }
            }
        }
        return found;
    }

    /** Prefixes that hold about a part: the nearest even number of nodes, and whole lines near it. */
    private Set<Integer> sizes(List<Integer> order) {
        Set<Integer> sizes = new LinkedHashSet<>();
        int heated = 0;
        for (int i = 0; i < order.size(); i++) {
            heated += graph.price(order.get(i)) > 0 ? 1 : 0;
            boolean near = Math.abs(heated - target) <= Math.max(2, OFF * target);
            boolean lineEnds = i + 1 == order.size() || jumps(order.get(i), order.get(i + 1));
            if (near && (lineEnds || Math.abs(heated - target) <= 1)) {
                sizes.add(i + 1);
            }
        }
        return sizes;
    }

    private boolean jumps(int a, int b) {
        return Math.abs(graph.column(a) - graph.column(b)) + Math.abs(graph.row(a) - graph.row(b)) > 1;
    }

    /** Nodes that one side cannot reach are offered to the other once. */
    private Optional<Split> divide(Split split, List<Integer> part, List<Integer> rest, int left) {
        if (within(part).isEmpty() || PortPlaces.apart(within(rest)) < left - 1) {
            return Optional.empty();
        }
        Optional<PartWorth> a = PartWorth.of(problem, part);
        Optional<PartWorth> b = PartWorth.of(problem, rest);
        if (a.isEmpty() || b.isEmpty()) {
            return Optional.empty();
        }
        List<Integer> strayA = without(part, a.get().nodes());
        List<Integer> strayB = without(rest, b.get().nodes());
        List<Integer> partNow = sorted(joined(a.get().nodes(), strayB));
        List<Integer> restNow = sorted(joined(b.get().nodes(), strayA));
        Optional<PartWorth> swappedA = strayB.isEmpty() && strayA.isEmpty() ? a : PartWorth.of(problem, partNow);
        Optional<PartWorth> swappedB = strayB.isEmpty() && strayA.isEmpty() ? b : PartWorth.of(problem, restNow);
        if (swappedA.isEmpty() || swappedB.isEmpty() || !isBalanced(swappedA.get(), swappedB.get(), left)) {
            return Optional.empty();
        }
        int places = PortPlaces.apart(within(swappedB.get().nodes()));
        return places < left - 1
                ? Optional.empty()
                : Optional.of(split.with(
                        swappedA.get(), partNow, restNow, swappedB.get().cost(), border(partNow, restNow)));
    }

    private boolean isBalanced(PartWorth part, PartWorth rest, int left) {
        double off = Math.max(2, OFF * target);
        return Math.abs(part.heated() - target) <= off && Math.abs((double) rest.heated() / (left - 1) - target) <= off;
    }

    private List<PortPair> within(List<Integer> nodes) {
        return problem.ports().stream()
                .filter(p ->
                        Collections.binarySearch(nodes, p.from()) >= 0 && Collections.binarySearch(nodes, p.to()) >= 0)
                .toList();
    }

    private int heated(List<Integer> nodes) {
        return (int) nodes.stream().filter(n -> graph.price(n) > 0).count();
    }

    private static List<Integer> sorted(List<Integer> nodes) {
        return nodes.stream().sorted().toList();
    }

    private static List<Integer> without(List<Integer> nodes, List<Integer> others) {
        return nodes.stream()
                .filter(n -> Collections.binarySearch(others, n) < 0)
                .toList();
    }

    private static List<Integer> joined(List<Integer> a, List<Integer> b) {
        return IntStream.concat(a.stream().mapToInt(n -> n), b.stream().mapToInt(n -> n))
                .boxed()
                .toList();
    }
}
