package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** Stiff pipe against brute force: every path through the port is walked, its rule written anew. */
class StiffLoopTest {
    private static final int GRIDS = 250;

    @Test
    void agreesWithEveryPath() {
        Random random = new Random(41);
        int loops = 0;
        for (int i = 0; i < GRIDS; i++) {
            LatticeGraph graph = grid(random, 4 + random.nextInt(2), 4 + random.nextInt(2));
            PortPair port = new PortPair(0, 1, 0);
            LoopProblem problem = Lattices.problem(graph, port);
            long best = best(problem, port);
            Answer<LoopSolution> outcome = new LoopSolver().solve(problem);
            assertEquals(best < Long.MAX_VALUE, outcome instanceof Answer.Found<LoopSolution>, "grid " + i);
            if (outcome instanceof Answer.Found<LoopSolution> found) {
                loops++;
                assertEquals(best, found.it().objective(), "grid " + i);
                assertEquals(OptionalInt.of((int) best), found.it().objectiveBound());
                assertEquals(List.of(), LoopVerifier.verify(problem, found.it()));
            }
        }
        assertTrue(loops > GRIDS / 2, "loops met: " + loops);
    }

    /** Ports on all sides to choose from. */
    @Test
    void choosesThePort() {
        Random random = new Random(7);
        for (int i = 0; i < 60; i++) {
            LatticeGraph graph = grid(random, 4, 5);
            List<PortPair> ports = List.of(new PortPair(0, 1, 0), new PortPair(2, 3, 1), new PortPair(0, 4, 2));
            LoopProblem problem = new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard());
            long best = ports.stream().mapToLong(p -> best(problem, p)).min().orElseThrow();
            Answer<LoopSolution> outcome = new LoopSolver().solve(problem);
            assertEquals(best < Long.MAX_VALUE, outcome instanceof Answer.Found<LoopSolution>, "grid " + i);
            if (outcome instanceof Answer.Found<LoopSolution> found) {
                assertEquals(best, found.it().objective(), "grid " + i);
                assertEquals(List.of(), LoopVerifier.verify(problem, found.it()));
            }
        }
    }

    /** A whole grid, some corners forbidden and some return bends allowed, at random. */
    private static LatticeGraph grid(Random random, int columns, int rows) {
        LatticeGraph.Builder builder = LatticeGraph.builder().stiff();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int node = builder.addNode(column, row, 3);
                if (column > 0) {
                    builder.link(builder.nodeAt(column - 1, row), node);
                }
                if (row > 0) {
                    builder.link(builder.nodeAt(column, row - 1), node);
                }
            }
        }
        int share = random.nextInt(4);
        for (int node = 0; node < columns * rows; node++) {
            for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
                for (Heading side : List.of(h.left(), h.right())) {
                    if (random.nextInt(3) < share) {
                        builder.allowReturn(node, h, side);
                    }
                }
            }
            if (random.nextInt(12) == 0) {
                Heading h = Heading.ofIndex(random.nextInt(4));
                builder.forbidBend(node, h, h.left());
            }
        }
        return builder.build();
    }

    private static long best(LoopProblem problem, PortPair port) {
        Deque<Integer> path = new ArrayDeque<>(List.of(port.from()));
        return walk(problem.graph(), path, new HashSet<>(path), port, EveryLoop.reachable(problem.graph(), port));
    }

    private static long walk(
            LatticeGraph graph, Deque<Integer> path, Set<Integer> on, PortPair port, Set<Integer> reachable) {
        long best = Long.MAX_VALUE;
        for (Heading heading : Heading.values()) {
            int next = graph.neighbour(path.getLast(), heading);
            if (next < 0 || on.contains(next) || (next == port.to() && path.size() < 3)) {
                continue;
            }
            path.addLast(next);
            on.add(next);
            long here = next == port.to()
                    ? objective(graph, List.copyOf(path), reachable)
                    : walk(graph, path, on, port, reachable);
            best = Math.min(best, here);
            on.remove(next);
            path.removeLast();
        }
        return best;
    }

    private static long objective(LatticeGraph graph, List<Integer> path, Set<Integer> reachable) {
        StringBuilder hands = new StringBuilder();
        long objective = 0;
        int size = path.size();
        for (int i = 0; i < size; i++) {
            Heading in = graph.headingTo(path.get((i + size - 1) % size), path.get(i));
            Heading out = graph.headingTo(path.get(i), path.get((i + 1) % size));
            boolean end = i == 0 || i == size - 1;
            objective += in == out ? 0 : 1;
            if (!end && !graph.bendAllowed(path.get(i), in.opposite(), out)) {
                return Long.MAX_VALUE;
            }
            hands.append(end || in == out ? '-' : in.left() == out ? 'l' : 'r');
        }
        String h = hands.toString();
        if (h.contains("lr") || h.contains("rl") || h.contains("lll") || h.contains("rrr")) {
            return Long.MAX_VALUE;
        }
        for (int i = 1; i < size; i++) {
            if (h.charAt(i) != '-' && h.charAt(i) == h.charAt(i - 1)) {
                Heading side = graph.headingTo(path.get(i), path.get(i + 1));
                Heading along = graph.headingTo(path.get(i - 1), path.get(i));
                if (!graph.returnAllowed(path.get(i - 1), along, side)) {
                    return Long.MAX_VALUE;
                }
            }
        }
        for (int node : reachable) {
            objective += path.contains(node) ? 0 : graph.price(node);
        }
        return objective;
    }
}
