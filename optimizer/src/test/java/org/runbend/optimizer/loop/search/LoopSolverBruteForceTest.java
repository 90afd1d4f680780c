package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** Against {@link EveryLoop}, which walks every loop there is. */
class LoopSolverBruteForceTest {
    private static final Preference ALONG_X = new Preference(Axis.X, false, 0.5);

    @Test
    void everyGridUpToFourByFiveThroughEveryLink() {
        for (int columns = 1; columns <= 4; columns++) {
            for (int rows = 1; rows <= 5; rows++) {
                LatticeGraph grid = Lattices.grid(columns, rows);
                for (PortPair port : Lattices.links(grid)) {
                    compare(grid, List.of(port), ALONG_X);
                }
            }
        }
    }

    @Test
    void raggedLatticesWithForbiddenBendsAndSeveralPorts() {
        Random random = new Random(20260);
        int loops = 0;
        for (int i = 0; i < 600; i++) {
            LatticeGraph graph =
                    Lattices.crowded(Lattices.ragged(2 + random.nextInt(3), 3 + random.nextInt(3), random), random);
            List<PortPair> links = Lattices.links(graph);
            if (!links.isEmpty() && BiconnectedBlock.all(graph).size() <= 1) {
                int first = random.nextInt(links.size());
                int count = 1 + random.nextInt(Math.min(5, links.size() - first));
                Preference preference = new Preference(
                        List.of(Axis.X, Axis.Y, Axis.NONE).get(random.nextInt(3)), false, random.nextInt(3) * 0.4);
                loops += compare(graph, links.subList(first, first + count), preference) ? 1 : 0;
            }
        }
        assertTrue(loops > 300, "only " + loops + " loops were compared");
    }

    private static boolean compare(LatticeGraph graph, List<PortPair> ports, Preference preference) {
        LoopProblem problem = new LoopProblem(graph, ports, preference, WorkLimit.standard());
        EveryLoop.Rating best = new EveryLoop(problem).best();
        Answer<LoopSolution> outcome = new LoopSolver().solve(problem);
        if (best == null) {
            assertInstanceOf(Answer.None.class, outcome);
            return false;
        }
        LoopSolution solution = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, solution));
        EveryLoop.Rating rating = new EveryLoop(problem).rating(solution);
        assertEquals(best, rating);
        assertEquals(best.objective(), solution.objective());
        assertTrue(solution.isProvedBest());
        return true;
    }
}
