package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.verify.LoopVerifier;

/** A merged cover is a loop, and never better than the proved best. */
class PatchedCoverTest {
    @Test
    void mergedCoversAreSoundLoops() {
        Random random = new Random(5);
        int loops = 0;
        for (int i = 0; i < 25; i++) {
            LatticeGraph graph = Lattices.ragged(7 + random.nextInt(3), 7, random);
            List<PortPair> links = Lattices.links(graph);
            PortPair port = links.get(random.nextInt(links.size()));
            BiconnectedBlock block =
                    BiconnectedBlock.ofLink(graph, port.from(), port.to()).orElse(null);
            if (block == null) {
                continue;
            }
            LoopProblem problem = Lattices.problem(graph, port);
            BlockProblem blockProblem = new BlockProblem(problem, block, List.of(port));
            int[] legs = new PatchedCover(blockProblem, 3).find();
            if (legs.length > 0) {
                LoopSolution loop = blockProblem.solution(legs, OptionalInt.empty(), OptionalInt.empty(), List.of());
                assertEquals(List.of(), LoopVerifier.verify(problem, loop));
                Answer<LoopSolution> exact = new ExactLaying(blockProblem).solve();
                assertTrue(exact instanceof Answer.Found<LoopSolution> found
                        && found.it().objective() <= loop.objective());
                loops++;
            }
        }
        assertTrue(loops > 10, "only " + loops + " loops");
    }
}
