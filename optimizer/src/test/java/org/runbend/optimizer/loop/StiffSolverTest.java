package org.runbend.optimizer.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StiffSolverTest {
    /** Against walking every loop of small lattices with holes and counting on the list of nodes. */
    @Test
    void agreesWithEveryLoop() {
        Random random = new Random(11);
        int found = 0;
        for (int round = 0; round < 60; round++) {
            LatticeGraph graph = lattice(random, 6, 5);
            List<PortPair> ports = ports(graph);
            if (ports.isEmpty()) {
                continue;
            }
            LoopProblem problem = new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard());
            List<PortBlock> blocks = PortBlock.of(problem);
            long least = blocks.isEmpty() ? Long.MAX_VALUE : least(graph, blocks.get(0));
            LoopOutcome outcome = new StiffSolver().solve(problem);
            if (outcome instanceof LoopOutcome.Found f) {
                assertEquals(least, f.solution().objective());
                assertTrue(f.solution().isProvedBest());
                assertEquals(List.of(), LoopVerifier.verify(problem, f.solution()));
                assertTrue(isStiff(graph, f.solution().cycle()));
                found++;
            } else {
                assertEquals(Long.MAX_VALUE, least);
            }
        }
        assertTrue(found > 20, "loops found: " + found);
    }

    private static LatticeGraph lattice(Random random, int columns, int rows) {
        LatticeGraph.Builder graph = LatticeGraph.builder();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                if (random.nextInt(12) > 0) {
                    graph.addNode(column, row, random.nextInt(6) > 0 ? 3 : 0);
                }
            }
        }
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                link(graph, column, row, column + 1, row);
                link(graph, column, row, column, row + 1);
            }
        }
        return graph.build();
    }

    private static void link(LatticeGraph.Builder graph, int column, int row, int nextColumn, int nextRow) {
        int a = graph.nodeAt(column, row);
        int b = graph.nodeAt(nextColumn, nextRow);
        if (a >= 0 && b >= 0) {
            graph.link(a, b);
        }
    }

    private static List<PortPair> ports(LatticeGraph graph) {
        List<PortPair> ports = new ArrayList<>();
        for (int n = 0; n < graph.size() && ports.size() < 3; n++) {
            int next = graph.neighbour(n, Heading.EAST);
            if (next >= 0 && graph.row(n) == 0) {
                ports.add(new PortPair(n, next, ports.size()));
            }
        }
        return ports;
    }

    private static long least(LatticeGraph graph, PortBlock block) {
        long[] best = {Long.MAX_VALUE};
        for (PortPair port : block.ports()) {
            List<Integer> path = new ArrayList<>(List.of(port.from()));
            walk(graph, block.block(), port, path, new HashSet<>(path), best);
        }
        return best[0];
    }

    private static void walk(
            LatticeGraph graph,
            BiconnectedBlock block,
            PortPair port,
            List<Integer> path,
            Set<Integer> on,
            long[] best) {
        int at = path.get(path.size() - 1);
        if (at == port.to()) {
            if (path.size() > 3 && isStiff(graph, path)) {
                best[0] = Math.min(best[0], objective(graph, block, path, on));
            }
            return;
        }
        for (Heading h : Heading.values()) {
            int next = graph.neighbour(at, h);
            if (next < 0 || on.contains(next) || (next == port.to() && path.size() < 3)) {
                continue;
            }
            path.add(next);
            on.add(next);
            walk(graph, block, port, path, on, best);
            on.remove(next);
            path.remove(path.size() - 1);
        }
    }

    private static long objective(LatticeGraph graph, BiconnectedBlock block, List<Integer> cycle, Set<Integer> on) {
        long sum = 0;
        for (int i = 0; i < cycle.size(); i++) {
            sum += turns(graph, cycle, i) ? 1 : 0;
        }
        for (int n : block.nodes()) {
            sum += on.contains(n) ? 0 : graph.price(n);
        }
        return sum;
    }

    /** No two turns in a row; over the port link, from the last node to the first, they may be. */
    private static boolean isStiff(LatticeGraph graph, List<Integer> cycle) {
        for (int i = 0; i + 1 < cycle.size(); i++) {
            if (turns(graph, cycle, i) && turns(graph, cycle, i + 1)) {
                return false;
            }
        }
        return true;
    }

    private static boolean turns(LatticeGraph graph, List<Integer> cycle, int i) {
        int before = cycle.get((i + cycle.size() - 1) % cycle.size());
        int after = cycle.get((i + 1) % cycle.size());
        return graph.column(before) != graph.column(after) && graph.row(before) != graph.row(after);
    }
}
