package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** The bounded program against brute force on tiny lattices and against the plain one on larger ones. */
class BoundedAgreementTest {
    @Test
    void tinyLatticesAgainstEveryLoop() {
        Random random = new Random(7);
        int loops = 0;
        for (int i = 0; i < 250; i++) {
            LatticeGraph graph = Lattices.ragged(3 + random.nextInt(2), 3 + random.nextInt(3), random);
            LoopProblem problem = problem(graph, random, 4);
            if (problem == null) {
                continue;
            }
            EveryLoop.Rating best = new EveryLoop(problem).best();
            Answer<LoopSolution> outcome = new BoundedLaying(blockProblem(problem)).solve();
            if (best == null) {
                assertInstanceOf(Answer.None.class, outcome);
            } else {
                assertEquals(best.objective(), provedObjective(problem, outcome));
                loops++;
            }
        }
        assertTrue(loops > 60, "only " + loops + " loops were compared");
    }

    @Test
    void raggedLatticesAgainstThePlainProgram() {
        Random random = new Random(20261);
        int loops = 0;
        for (int i = 0; i < 90; i++) {
            LatticeGraph graph = Lattices.ragged(6 + random.nextInt(4), 6 + random.nextInt(4), random);
            LoopProblem problem = problem(graph, random, 3);
            if (problem == null) {
                continue;
            }
            Answer<LoopSolution> plain = new ExactLaying(blockProblem(problem)).solve();
            Answer<LoopSolution> bounded = new BoundedLaying(blockProblem(problem)).solve();
            assertEquals(plain.getClass(), bounded.getClass());
            if (plain instanceof Answer.Found<LoopSolution>) {
                assertEquals(provedObjective(problem, plain), provedObjective(problem, bounded));
                loops++;
            }
        }
        assertTrue(loops > 40, "only " + loops + " loops were compared");
    }

    /** Some nodes must be passed: brute force, the plain and the bounded program agree, on "no loop" too. */
    @Test
    void nodesThatMustBePassedAgainstEveryLoop() {
        Random random = new Random(11);
        int loops = 0;
        int none = 0;
        for (int i = 0; i < 400; i++) {
            LatticeGraph graph = wanting(random);
            LoopProblem problem = problem(graph, random, 4);
            if (problem == null) {
                continue;
            }
            EveryLoop.Rating best = new EveryLoop(problem).best();
            Answer<LoopSolution> solved = new LoopSolver().solve(problem);
            if (!BiconnectedBlock.all(graph).get(0).holdsAllWanted(graph)) {
                assertInstanceOf(Answer.None.class, solved);
                continue;
            }
            Answer<LoopSolution> bounded = new BoundedLaying(blockProblem(problem)).solve();
            if (best == null) {
                assertInstanceOf(Answer.None.class, bounded);
                assertInstanceOf(Answer.None.class, solved);
                none++;
            } else {
                assertEquals(best.objective(), provedObjective(problem, bounded));
                assertEquals(best.objective(), provedObjective(problem, solved));
                loops++;
            }
        }
        assertTrue(loops > 100 && none > 2, loops + " loops were compared, " + none + " times there was none");
    }

    /** A ragged lattice of cheap nodes, of which some must be passed. */
    private static LatticeGraph wanting(Random random) {
        StringBuilder drawing = new StringBuilder();
        int columns = 3 + random.nextInt(2);
        int rows = 3 + random.nextInt(3);
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                drawing.append(random.nextInt(9) == 0 ? '.' : random.nextInt(4) == 0 ? 'o' : '0');
            }
            drawing.append('\n');
        }
        LatticeGraph.Builder builder = Lattices.picturing(drawing.toString());
        int size = builder.build().size();
        for (int i = random.nextInt(8); i >= 0; i--) {
            builder.want(random.nextInt(size));
        }
        return builder.build();
    }

    /** Ports are some consecutive links; null unless they all lie in the only block. */
    private static LoopProblem problem(LatticeGraph graph, Random random, int mostPorts) {
        List<PortPair> links = Lattices.links(graph);
        if (links.isEmpty() || BiconnectedBlock.all(graph).size() != 1) {
            return null;
        }
        BiconnectedBlock block = BiconnectedBlock.all(graph).get(0);
        int first = random.nextInt(links.size());
        List<PortPair> ports = links.subList(first, Math.min(links.size(), first + 1 + random.nextInt(mostPorts)));
        boolean inside = ports.stream().allMatch(port -> block.contains(port.from()) && block.contains(port.to()));
        return inside ? new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard()) : null;
    }

    private static BlockProblem blockProblem(LoopProblem problem) {
        return new BlockProblem(problem, BiconnectedBlock.all(problem.graph()).get(0), problem.ports());
    }

    /** The objective of a found loop, which passes the verifier and is proved. */
    private static long provedObjective(LoopProblem problem, Answer<LoopSolution> outcome) {
        LoopSolution solution = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, solution));
        assertTrue(solution.isProvedBest());
        assertEquals(solution.turns(), solution.turnBound().orElseThrow());
        return solution.objective();
    }
}
