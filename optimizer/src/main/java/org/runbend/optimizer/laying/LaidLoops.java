package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.Lead;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.loop.LoopCost;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Loops on their lattice.
 *
 * @param lattice the lattice
 * @param loops in the order in which they come to the port along the rim
 * @param parts nodes that each loop is laid on, in the order of the solutions
 * @param solutions the loops as nodes, not in the order along the rim
 * @param limit what the loops were shortened to, mm; empty if they were not
 * @param whole all loops as if they were one, for those who ask what is served and what is not
 */
public record LaidLoops(
        Lattice lattice,
        List<One> loops,
        List<List<Integer>> parts,
        List<LoopSolution> solutions,
        OptionalDouble limit,
        LoopSolution whole) {
    public LaidLoops {
        loops = List.copyOf(loops);
        parts = List.copyOf(parts);
        solutions = List.copyOf(solutions);
    }

    /** The job with its direction settled as the lattice lies. */
    Job turned(Job job) {
        return LatticeDirection.settled(job, lattice.angle());
    }

    /**
     * A loop.
     *
     * @param path places of its nodes in order of flow
     * @param turns corners of the closed cycle
     * @param leftOut heated nodes of its part that it does not serve
     * @param turnBound least turns at this leftOut, if proved for any single loop on the lattice
     * @param pieceCost what its straight pieces cost, if they have a price
     * @param objective turns + price of what is left out + that of straight pieces, in the unit of the lattice's prices
     * @param objectiveBound least objective, likewise
     * @param bare places of the heated nodes not served
     * @param provedBest whether no loop in its part is better
     * @param leads the ways to its holes, if they were settled before it was laid
     */
    public record One(
            List<Point> path,
            int turns,
            int leftOut,
            OptionalInt turnBound,
            int pieceCost,
            int objective,
            OptionalInt objectiveBound,
            List<Point> bare,
            boolean provedBest,
            Optional<Lead.Pair> leads) {
        public One {
            path = List.copyOf(path);
            bare = List.copyOf(bare);
        }

        private One backwards() {
            List<Point> reversed = new ArrayList<>(path);
            Collections.reverse(reversed);
            return new One(
                    reversed, turns, leftOut, turnBound, pieceCost, objective, objectiveBound, bare, provedBest, leads);
        }

        private Point first() {
            return path.get(0);
        }

        private Point last() {
            return path.get(path.size() - 1);
        }
    }

    /** A single loop. */
    static LaidLoops of(Lattice lattice, LoopSolution loop) {
        One one = new One(
                LoopPipes.oriented(lattice, loop).stream().map(lattice::at).toList(),
                loop.turns(),
                loop.leftOut(),
                loop.turnBound(),
                LoopCost.ofPieces(lattice.graph(), loop.cycle()),
                loop.objective(),
                loop.objectiveBound(),
                bare(lattice, loop),
                loop.isProvedBest(),
                LoopPipes.leads(lattice, loop.port()));
        List<Integer> all = IntStream.range(0, lattice.graph().size()).boxed().toList();
        return new LaidLoops(lattice, List.of(one), List.of(all), List.of(loop), OptionalDouble.empty(), loop);
    }

    /**
     * A single loop of stiff pipe: what is proved of such loops is no bound for any loop, and no price is known at which
     * one of them would serve more.
     */
    static LaidLoops ofStiff(Lattice lattice, LoopSolution loop) {
        LoopSolution bare = new LoopSolution(
                loop.cycle(),
                loop.port(),
                loop.turns(),
                loop.leftOut(),
                OptionalInt.empty(),
                loop.objective(),
                OptionalInt.empty(),
                loop.pairs());
        LaidLoops laid = of(lattice, bare);
        One one = laid.loops.get(0);
        One proved = new One(
                one.path,
                one.turns,
                one.leftOut,
                one.turnBound,
                one.pieceCost,
                one.objective,
                one.objectiveBound,
                one.bare,
                loop.isProvedBest(),
                one.leads);
        return new LaidLoops(
                lattice, List.of(proved), laid.parts, laid.solutions, OptionalDouble.empty(), whole(List.of(loop)));
    }

    private static List<Point> bare(Lattice lattice, LoopSolution loop) {
        BiconnectedBlock block = BiconnectedBlock.ofLink(
                        lattice.graph(), loop.port().from(), loop.port().to())
                .orElseThrow();
        return notServed(lattice.graph(), block.nodes(), loop).stream()
                .map(lattice::at)
                .toList();
    }

    /**
     * Several loops, each with the nodes that fell to it; what holds for a part alone is no bound for the lattice. They
     * are put in the order of their port pairs round the port, flow before return, so that no tail crosses another.
     */
    static LaidLoops of(Lattice lattice, List<List<Integer>> parts, List<LoopSolution> loops, Point port) {
        List<One> ones = new ArrayList<>();
        LatticeGraph graph = lattice.graph();
        for (int i = 0; i < loops.size(); i++) {
            LoopSolution loop = loops.get(i);
            List<Integer> bare = notServed(graph, parts.get(i), loop);
            ones.add(new One(
                    LoopPipes.oriented(lattice, loop).stream().map(lattice::at).toList(),
                    loop.turns(),
                    bare.size(),
                    OptionalInt.empty(),
                    LoopCost.ofPieces(graph, loop.cycle()),
                    (int) LoopCost.ofShape(graph, loop.cycle())
                            + bare.stream().mapToInt(graph::price).sum(),
                    OptionalInt.empty(),
                    bare.stream().map(lattice::at).toList(),
                    loop.isProvedBest(),
                    LoopPipes.leads(lattice, loop.port())));
        }
        List<One> ordered = lattice.leads().isEmpty() ? aroundPort(ones, port) : byHoles(lattice, ones, loops);
        return new LaidLoops(lattice, ordered, parts, loops, OptionalDouble.empty(), whole(loops));
    }

    /** The same, some loops shortened to a limit in mm. */
    LaidLoops shortened(List<LoopSolution> shorter, double to, Point port) {
        LaidLoops laid = shorter.size() == 1 ? of(lattice, shorter.get(0)) : of(lattice, parts, shorter, port);
        return new LaidLoops(lattice, laid.loops, parts, shorter, OptionalDouble.of(to), laid.whole);
    }

    private static List<Integer> notServed(LatticeGraph graph, List<Integer> nodes, LoopSolution loop) {
        Set<Integer> served = new HashSet<>(loop.cycle());
        return nodes.stream()
                .filter(n -> graph.price(n) > 0 && !served.contains(n))
                .toList();
    }

    /** Leaves nothing out, so that nobody asks which price a single loop would answer to. */
    private static LoopSolution whole(List<LoopSolution> loops) {
        int turns = loops.stream().mapToInt(LoopSolution::turns).sum();
        return new LoopSolution(
                loops.stream().flatMap(l -> l.cycle().stream()).toList(),
                loops.get(0).port(),
                turns,
                0,
                OptionalInt.empty(),
                turns,
                OptionalInt.empty(),
                List.of());
    }

    /** In the order in which the holes stand in the job. */
    private static List<One> byHoles(Lattice lattice, List<One> ones, List<LoopSolution> loops) {
        return IntStream.range(0, ones.size())
                .boxed()
                .sorted(Comparator.comparingInt(
                        i -> LoopPipes.indexOf(lattice, loops.get(i).port())))
                .map(ones::get)
                .toList();
    }

    /** Anticlockwise round the port, beginning after the widest gap: that is where no pipe comes in. */
    private static List<One> aroundPort(List<One> ones, Point port) {
        double[] angles = ones.stream()
                .flatMap(o -> List.of(o.first(), o.last()).stream())
                .mapToDouble(p -> angle(port, p))
                .sorted()
                .toArray();
        double start = angles[0];
        double widest = angles[0] + 360 - angles[angles.length - 1];
        for (int i = 1; i < angles.length; i++) {
            if (angles[i] - angles[i - 1] > widest + 1e-6) {
                widest = angles[i] - angles[i - 1];
                start = angles[i];
            }
        }
        double from = start - 1e-6;
        return ones.stream()
                .map(o -> turned(port, o.last(), from) < turned(port, o.first(), from) ? o.backwards() : o)
                .sorted(Comparator.comparingDouble(o -> turned(port, o.first(), from)))
                .toList();
    }

    private static double turned(Point port, Point p, double from) {
        double d = (angle(port, p) - from) % 360;
        return d < 0 ? d + 360 : d;
    }

    private static double angle(Point port, Point p) {
        return Math.toDegrees(Math.atan2(p.y() - port.y(), p.x() - port.x()));
    }

    /** Name of the loop of that number: A, B, ... */
    public static String name(int index) {
        return String.valueOf((char) ('A' + index));
    }

    /** Whether each loop is proved best in its part. */
    public boolean eachProvedBest() {
        return IntStream.range(0, loops.size()).allMatch(i -> loops.get(i).provedBest());
    }
}
