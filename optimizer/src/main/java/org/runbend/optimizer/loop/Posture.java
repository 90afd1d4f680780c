package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * A problem turned and mirrored to the one posture that all its images share, so that a floor and its mirror image get loops that
 * are mirror images, and one of them need be laid. Of the eight images on the lattice it is the first by its numbers.
 */
public final class Posture {
    private static final int IMAGES = 8;
    private static final List<Heading> FORTH = List.of(Heading.EAST, Heading.NORTH);

    private final LoopProblem asked;
    private final LoopProblem shared;
    private final int[] askedNode;
    private final List<Integer> numbers;

    private Posture(LoopProblem asked, LoopProblem shared, int[] askedNode, List<Integer> numbers) {
        this.asked = asked;
        this.shared = shared;
        this.askedNode = askedNode;
        this.numbers = numbers;
    }

    /** The posture of a problem. */
    public static Posture of(LoopProblem problem) {
        return IntStream.range(0, IMAGES)
                .mapToObj(image -> image(problem, image))
                .min(Comparator.comparing((Posture p) -> p.numbers, Posture::compare))
                .orElseThrow();
    }

    /** The problem in the shared posture, its nodes numbered row by row from the lower left. */
    public LoopProblem problem() {
        return shared;
    }

    /** All that a loop depends on in whole numbers, the same for all images of a problem and for no other. */
    public List<Integer> numbers() {
        return numbers;
    }

    /** Nodes of the shared posture as nodes of the problem asked. */
    public List<Integer> back(List<Integer> nodes) {
        return nodes.stream().map(n -> askedNode[n]).toList();
    }

    /** A loop of the shared posture as a loop of the problem asked. */
    public LoopSolution back(LoopSolution loop) {
        PortPair port = asked.ports().stream()
                .filter(p -> p.from() == askedNode[loop.port().from()]
                        && p.to() == askedNode[loop.port().to()])
                .findFirst()
                .orElseThrow();
        return new LoopSolution(
                back(loop.cycle()),
                port,
                loop.turns(),
                loop.leftOut(),
                loop.turnBound(),
                loop.objective(),
                loop.objectiveBound(),
                loop.pairs());
    }

    private static Posture image(LoopProblem problem, int image) {
        LatticeGraph graph = problem.graph();
        int[] order = IntStream.range(0, graph.size())
                .boxed()
                .sorted(Comparator.comparingInt((Integer n) -> row(graph, n, image))
                        .thenComparingInt(n -> column(graph, n, image)))
                .mapToInt(Integer::intValue)
                .toArray();
        int[] number = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            number[order[i]] = i;
        }
        List<PortPair> ports = problem.ports().stream()
                .map(p -> new PortPair(number[p.from()], number[p.to()], p.rank()))
                .sorted(Comparator.comparingInt(PortPair::rank)
                        .thenComparingInt(PortPair::from)
                        .thenComparingInt(PortPair::to))
                .toList();
        Preference wish = problem.preference();
        LoopProblem turned = new LoopProblem(
                turned(graph, order, number, image),
                ports,
                new Preference(axis(wish.axis(), image), wish.evenHeat(), wish.bendClearanceInSpacings()),
                problem.limit());
        return new Posture(problem, turned, order, numbers(turned));
    }

    private static LatticeGraph turned(LatticeGraph graph, int[] order, int[] number, int image) {
        LatticeGraph.Builder turned = LatticeGraph.builder();
        int left = Arrays.stream(order).map(n -> column(graph, n, image)).min().orElse(0);
        int low = Arrays.stream(order).map(n -> row(graph, n, image)).min().orElse(0);
        for (int n : order) {
            turned.addNode(column(graph, n, image) - left, row(graph, n, image) - low, graph.price(n));
        }
        for (int n : order) {
            int node = number[n];
            if (graph.isWanted(n)) {
                turned.want(node);
            }
            if (graph.isCrowded(n)) {
                turned.crowd(node);
            }
            for (Heading leg : Heading.values()) {
                if (!graph.bendAllowed(n, leg, leg.left())) {
                    turned.forbidBend(node, heading(leg, image), heading(leg.left(), image));
                }
            }
            for (Heading along : FORTH) {
                int next = graph.neighbour(n, along);
                if (next >= 0) {
                    turned.link(node, number[next]);
                    allowReturns(graph, n, along, turned, number, image);
                }
            }
        }
        turned.turnCost(graph.turnCost()).straightCost(graph.straightCost());
        return (graph.isStiff() ? turned.stiff() : turned).build();
    }

    private static void allowReturns(
            LatticeGraph graph, int node, Heading along, LatticeGraph.Builder turned, int[] number, int image) {
        Heading way = heading(along, image);
        boolean forth = FORTH.contains(way);
        int from = number[forth ? node : graph.neighbour(node, along)];
        for (Heading side : List.of(along.left(), along.right())) {
            if (graph.returnAllowed(node, along, side)) {
                turned.allowReturn(from, forth ? way : way.opposite(), heading(side, image));
            }
        }
    }

    private static List<Integer> numbers(LoopProblem problem) {
        LatticeGraph graph = problem.graph();
        List<Integer> all = new ArrayList<>();
        all.add(graph.size());
        for (int n = 0; n < graph.size(); n++) {
            all.add(graph.column(n));
            all.add(graph.row(n));
            all.add(graph.price(n));
            all.add(marks(graph, n));
        }
        problem.ports().forEach(p -> all.addAll(List.of(p.from(), p.to(), p.rank())));
        all.add(graph.turnCost());
        all.add(graph.straightCost().end());
        all.addAll(graph.straightCost().extra());
        Axis axis = problem.preference().axis();
        all.add(axis == Axis.NONE ? 0 : axis == Axis.X ? 1 : 2);
        all.add(problem.preference().evenHeat() ? 1 : 0);
        long clearance = Double.doubleToLongBits(problem.preference().bendClearanceInSpacings());
        for (long limit : List.of(
                clearance, problem.limit().statesPerLayer(), problem.limit().totalStates())) {
            all.add((int) (limit >>> Integer.SIZE));
            all.add((int) limit);
        }
        return List.copyOf(all);
    }

    /** Links, corners and return bends of a node, a bit each. */
    private static int marks(LatticeGraph graph, int node) {
        int marks = (graph.isStiff() ? 4 : 0) + (graph.isWanted(node) ? 2 : 0) + (graph.isCrowded(node) ? 1 : 0);
        for (Heading leg : Heading.values()) {
            marks = 2 * marks + (graph.neighbour(node, leg) >= 0 ? 1 : 0);
            marks = 2 * marks + (graph.bendAllowed(node, leg, leg.left()) ? 1 : 0);
        }
        for (Heading along : FORTH) {
            boolean linked = graph.neighbour(node, along) >= 0;
            marks = 2 * marks + (linked && graph.returnAllowed(node, along, along.left()) ? 1 : 0);
            marks = 2 * marks + (linked && graph.returnAllowed(node, along, along.right()) ? 1 : 0);
        }
        return marks;
    }

    private static int compare(List<Integer> a, List<Integer> b) {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            int order = Integer.compare(a.get(i), b.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(a.size(), b.size());
    }

    private static Axis axis(Axis axis, int image) {
        boolean across = image % 2 == 1;
        if (axis == Axis.NONE || !across) {
            return axis;
        }
        return axis == Axis.X ? Axis.Y : Axis.X;
    }

    /** Images 0 to 3 are quarter turns to the left, 4 to 7 the same after the columns were mirrored. */
    private static Heading heading(Heading heading, int image) {
        boolean mirrored = image >= IMAGES / 2 && heading.dx() != 0;
        Heading first = mirrored ? heading.opposite() : heading;
        return Heading.ofIndex((first.index() + image) % 4);
    }

    private static int column(LatticeGraph graph, int node, int image) {
        return place(graph, node, image, true);
    }

    private static int row(LatticeGraph graph, int node, int image) {
        return place(graph, node, image, false);
    }

    private static int place(LatticeGraph graph, int node, int image, boolean column) {
        Heading east = heading(Heading.EAST, image);
        Heading north = heading(Heading.NORTH, image);
        int byColumn = column ? east.dx() : east.dy();
        int byRow = column ? north.dx() : north.dy();
        return byColumn * graph.column(node) + byRow * graph.row(node);
    }
}
