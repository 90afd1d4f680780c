package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;

/** The model that our loops are measured against answers the same question. */
class CircuitModelTest {
    @Test
    void raggedLatticesAgainstEveryLoop() {
        Random random = new Random(99);
        int loops = 0;
        for (int i = 0; i < 60; i++) {
            LatticeGraph graph = Lattices.ragged(3 + random.nextInt(2), 3 + random.nextInt(3), random);
            List<BiconnectedBlock> blocks = BiconnectedBlock.all(graph);
            List<PortPair> ports = Lattices.links(graph).stream()
                    .filter(p -> blocks.size() == 1
                            && blocks.get(0).contains(p.from())
                            && blocks.get(0).contains(p.to()))
                    .skip(random.nextInt(4))
                    .limit(3)
                    .toList();
            if (!ports.isEmpty()) {
                LoopProblem problem = new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard());
                EveryLoop.Rating best = new EveryLoop(problem).best();
                OptionalInt expected = best == null ? OptionalInt.empty() : OptionalInt.of((int) best.objective());
                CircuitModel.Answer answer = new CircuitModel(5).solve(problem);
                assertEquals(expected, answer.objective());
                assertEquals(expected, answer.bound());
                loops += best == null ? 0 : 1;
            }
        }
        assertTrue(loops > 20, "only " + loops + " loops were compared");
    }

    /**
     * A search that was stopped has a sound loop and a sound bound: 8 x 8 can be laid with 16 turns and no fewer (Jehn
     * 2021), and a closed loop on a lattice turns as often from rows to columns as back, so the number is even.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.3, 1})
    void stoppedSearch(double work) {
        LoopProblem problem = Lattices.problem(Lattices.grid(8, 8), new PortPair(0, 8, 0));
        CircuitModel.Answer answer = new CircuitModel(work).solve(problem);
        assertTrue(answer.bound().orElseThrow() <= 16);
        if (answer.objective().isPresent()) {
            int turns = answer.turns().orElseThrow();
            assertEquals(0, turns % 2, () -> turns + " turns");
            assertEquals(
                    turns + 10 * answer.leftOut().orElseThrow(),
                    answer.objective().getAsInt());
            assertTrue(answer.objective().getAsInt() >= 16);
        }
    }
}
