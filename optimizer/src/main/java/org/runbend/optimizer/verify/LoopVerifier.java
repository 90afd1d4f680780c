package org.runbend.optimizer.verify;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Checks a loop from problem and solution alone: one simple cycle over existing links through its port pair, every bend
 * allowed, counts and prices as stated, bounds not above them. Shares no line with the solvers.
 */
public final class LoopVerifier {
    private LoopVerifier() {}

    /** What is wrong, in words; empty when nothing is. */
    public static List<Finding> verify(LoopProblem problem, LoopSolution solution) {
        Findings faults = new Findings();
        checkCycle(problem, solution, faults);
        if (faults.isEmpty()) {
            checkBends(problem.graph(), solution, faults);
            checkStiff(problem.graph(), solution, faults);
            checkCounts(problem.graph(), solution, faults);
            checkBounds(solution, faults);
        }
        return faults.all();
    }

    private static void checkCycle(LoopProblem problem, LoopSolution solution, Findings faults) {
        List<Integer> cycle = solution.cycle();
        if (!problem.ports().contains(solution.port())) {
            faults.unless(false, "port pair %s was not offered", solution.port());
        }
        if (cycle.size() < 4 || cycle.stream().distinct().count() != cycle.size()) {
            faults.unless(false, "the loop has %d nodes, or one of them twice", cycle.size());
            return;
        }
        if (cycle.get(0) != solution.port().from()
                || cycle.get(cycle.size() - 1) != solution.port().to()) {
            faults.unless(
                    false,
                    "the loop does not run from %d to %d",
                    solution.port().from(),
                    solution.port().to());
        }
        for (int i = 0; i < cycle.size(); i++) {
            int a = cycle.get(i);
            int b = cycle.get((i + 1) % cycle.size());
            if (a < 0
                    || b < 0
                    || a >= problem.graph().size()
                    || b >= problem.graph().size()) {
                faults.unless(false, "no link from %d to %d", a, b);
            } else if (!neighbours(problem.graph(), a).contains(b)) {
                faults.unless(false, "no link from %d to %d", a, b);
            }
        }
    }

    private static List<Integer> neighbours(LatticeGraph graph, int node) {
        List<Integer> neighbours = new ArrayList<>();
        for (Heading heading : Heading.values()) {
            int next = graph.neighbour(node, heading);
            if (next >= 0) {
                neighbours.add(next);
            }
        }
        return neighbours;
    }

    private static Heading step(LatticeGraph graph, int a, int b) {
        return Heading.ofStep(graph.column(b) - graph.column(a), graph.row(b) - graph.row(a));
    }

    private static void checkBends(LatticeGraph graph, LoopSolution solution, Findings faults) {
        List<Integer> cycle = solution.cycle();
        for (int i = 1; i + 1 < cycle.size(); i++) {
            Heading back = step(graph, cycle.get(i), cycle.get(i - 1));
            Heading on = step(graph, cycle.get(i), cycle.get(i + 1));
            if (!graph.bendAllowed(cycle.get(i), back, on)) {
                faults.unless(false, "bend from %s to %s at node %d is forbidden", back, on, cycle.get(i));
            }
        }
    }

    /** Stiff pipe: between two bends lies a node that is passed straight, but in a return bend that has room. */
    private static void checkStiff(LatticeGraph graph, LoopSolution solution, Findings faults) {
        List<Integer> cycle = solution.cycle();
        int before = 0;
        int beforeThat = 0;
        for (int i = 1; i + 1 < cycle.size() && graph.isStiff(); i++) {
            Heading back = step(graph, cycle.get(i), cycle.get(i - 1));
            Heading on = step(graph, cycle.get(i), cycle.get(i + 1));
            int hand = back.dx() * on.dy() - back.dy() * on.dx();
            boolean pair = hand == before && beforeThat == 0 && graph.returnAllowed(cycle.get(i), back, on);
            if (hand != 0 && before != 0 && !pair) {
                faults.unless(false, "two turns in a row at node %d of stiff pipe", cycle.get(i));
            }
            beforeThat = before;
            before = hand;
        }
    }

    private static void checkCounts(LatticeGraph graph, LoopSolution solution, Findings faults) {
        List<Integer> cycle = solution.cycle();
        int size = cycle.size();
        int turns = 0;
        for (int i = 0; i < size; i++) {
            int before = cycle.get((i + size - 1) % size);
            int after = cycle.get((i + 1) % size);
            boolean straight = graph.column(before) == graph.column(after) || graph.row(before) == graph.row(after);
            turns += straight ? 0 : 1;
        }
        compare("turns", turns, solution.turns(), faults);
        BitSet served = new BitSet();
        cycle.forEach(served::set);
        for (int node = 0; node < graph.size(); node++) {
            if (graph.isWanted(node) && !served.get(node)) {
                faults.unless(false, "node %d must be served and is not", node);
            }
        }
        BitSet reachable = reachable(graph, solution.port());
        int leftOut = 0;
        long objective = (long) graph.turnCost() * turns + pieces(graph, cycle);
        for (int node = 0; node < graph.size(); node++) {
            if (!served.get(node) && graph.price(node) > 0 && reachable.get(node)) {
                leftOut++;
                objective += graph.price(node);
            }
        }
        compare("leftOut", leftOut, solution.leftOut(), faults);
        compare("objective", objective, solution.objective(), faults);
    }

    /** Walks the closed cycle twice, so that the piece over its start is seen whole. */
    private static int pieces(LatticeGraph graph, List<Integer> cycle) {
        int size = cycle.size();
        int cost = 0;
        int straight = 0;
        for (int i = 0; i < 2 * size; i++) {
            int before = cycle.get((i + size - 1) % size);
            int after = cycle.get((i + 1) % size);
            if (graph.column(before) == graph.column(after) || graph.row(before) == graph.row(after)) {
                straight++;
            } else {
                boolean priced = i >= size && straight > 0;
                int extra =
                        straight > 0 && straight <= graph.straightCost().extra().size()
                                ? graph.straightCost().extra().get(straight - 1)
                                : 0;
                cost += priced ? graph.straightCost().end() * 2 + extra : 0;
                straight = 0;
            }
        }
        return cost;
    }

    private static void compare(String what, long counted, long stated, Findings faults) {
        faults.unless(counted == stated, "%s is %d, not %d", what, counted, stated);
    }

    /**
     * Menger: a node shares a simple cycle with the link ab exactly if no single other node parts it from the link. So
     * take away each node in turn and look who can still be walked to from a or b.
     */
    private static BitSet reachable(LatticeGraph graph, PortPair port) {
        BitSet reachable = walk(graph, port, -1);
        for (int removed = 0; removed < graph.size(); removed++) {
            BitSet seen = walk(graph, port, removed);
            seen.set(removed);
            reachable.and(seen);
        }
        return reachable;
    }

    private static BitSet walk(LatticeGraph graph, PortPair port, int removed) {
        BitSet seen = new BitSet();
        Deque<Integer> queue = new ArrayDeque<>();
        for (int end : List.of(port.from(), port.to())) {
            if (end != removed) {
                seen.set(end);
                queue.add(end);
            }
        }
        while (!queue.isEmpty()) {
            for (int next : neighbours(graph, queue.poll())) {
                if (next != removed && !seen.get(next)) {
                    seen.set(next);
                    queue.add(next);
                }
            }
        }
        return seen;
    }

    private static void checkBounds(LoopSolution solution, Findings faults) {
        if (solution.turnBound().orElse(4) < 4 || solution.objectiveBound().orElse(4) < 4) {
            faults.unless(false, "a bound is below the four turns that every loop has");
        }
    }
}
