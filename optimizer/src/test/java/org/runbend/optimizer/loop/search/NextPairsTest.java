package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.TradeOff;
import org.runbend.optimizer.loop.WorkLimit;

/** The pairs beside a loop against brute force: every simple cycle through the port walked. */
class NextPairsTest {
    @Test
    void leastTurnsByNodesLeftOut() {
        Random random = new Random(9);
        int pairs = 0;
        for (int floor = 0; floor < 12; floor++) {
            LatticeGraph graph = holed(random);
            LoopProblem problem = new LoopProblem(
                    graph, List.of(Lattices.links(graph).get(0)), Preference.longRuns(), WorkLimit.standard());
            if (!(new LoopSolver().solve(problem) instanceof Answer.Found<LoopSolution> found)) {
                continue;
            }
            Map<Integer, Integer> least = new Walk(graph, problem.ports().get(0)).least();
            List<TradeOff> around = new NextPairs().around(problem, found.it());
            for (TradeOff pair : around) {
                assertEquals(least.get(pair.leftOut()), pair.turns(), "left out " + pair.leftOut());
                assertEquals(OptionalInt.of(pair.turns()), pair.turnBound());
            }
            pairs += around.size();
        }
        assertTrue(pairs > 20, "only " + pairs + " pairs");
    }

    @Test
    void stiffPipeHasItsOwnPairAlone() {
        LatticeGraph graph = Lattices.grid(8, 6).copy().stiff().build();
        LoopProblem problem = new LoopProblem(
                graph, List.of(Lattices.links(graph).get(0)), Preference.longRuns(), WorkLimit.standard());
        LoopSolution loop = new LoopSolver().solve(problem).value().orElseThrow();
        assertEquals(
                List.of(new TradeOff(loop.leftOut(), loop.turns(), loop.turnBound())),
                new NextPairs().around(problem, loop));
    }

    /** 5 x 4 or 6 x 4 nodes, one missing. */
    private static LatticeGraph holed(Random random) {
        int columns = 5 + random.nextInt(2);
        StringBuilder drawing =
                new StringBuilder("o".repeat(columns).concat("\n").repeat(4));
        drawing.setCharAt((columns + 1) * random.nextInt(3) + random.nextInt(columns), '.');
        return Lattices.picture(drawing.toString());
    }

    /** Walks every simple cycle through a link, with what it leaves out of the port's block. */
    private static final class Walk {
        private final LatticeGraph graph;
        private final PortPair port;
        private final BiconnectedBlock block;
        private final boolean[] on;
        private final Map<Integer, Integer> least = new TreeMap<>();

        Walk(LatticeGraph graph, PortPair port) {
            this.graph = graph;
            this.port = port;
            this.block = BiconnectedBlock.ofLink(graph, port.from(), port.to()).orElseThrow();
            this.on = new boolean[graph.size()];
        }

        Map<Integer, Integer> least() {
            on[port.from()] = true;
            go(port.from(), graph.headingTo(port.to(), port.from()), 0, 1);
            return least;
        }

        private void go(int node, Heading heading, int turns, int length) {
            for (Heading out : Heading.values()) {
                int next = graph.neighbour(node, out);
                int after = turns + (out == heading ? 0 : 1);
                if (next == port.to() && length > 2) {
                    Heading home = graph.headingTo(port.to(), port.from());
                    least.merge(block.size() - length - 1, after + (out == home ? 0 : 1), Math::min);
                } else if (next >= 0 && next != port.to() && !on[next]) {
                    on[next] = true;
                    go(next, out, after, length + 1);
                    on[next] = false;
                }
            }
        }
    }
}
