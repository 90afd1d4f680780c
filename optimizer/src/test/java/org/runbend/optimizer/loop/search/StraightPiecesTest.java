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
import org.runbend.optimizer.lattice.StraightCost;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** Prices with decimals, straight pieces and those too short for a plate, against {@link EveryLoop}. */
class StraightPiecesTest {
    private static final Preference ALONG_X = new Preference(Axis.X, false, 0.5);

    @Test
    void everyGridUpToFourByFiveThroughEveryLink() {
        Random random = new Random(17);
        for (int columns = 1; columns <= 4; columns++) {
            for (int rows = 1; rows <= 5; rows++) {
                for (PortPair port : Lattices.links(Lattices.grid(columns, rows))) {
                    compare(priced(Lattices.grid(columns, rows), random), List.of(port));
                }
            }
        }
    }

    @Test
    void twoThousandRaggedLatticesWithForbiddenBendsAndSeveralPorts() {
        Random random = new Random(202611);
        int loops = 0;
        for (int i = 0; i < 2000; i++) {
            LatticeGraph graph = priced(Lattices.ragged(3 + random.nextInt(3), 3 + random.nextInt(3), random), random);
            List<PortPair> links = Lattices.links(graph);
            if (!links.isEmpty() && BiconnectedBlock.all(graph).size() <= 1) {
                int first = random.nextInt(links.size());
                int count = 1 + random.nextInt(Math.min(4, links.size() - first));
                loops += compare(graph, links.subList(first, first + count)) ? 1 : 0;
            }
        }
        assertTrue(loops > 900, "only " + loops + " loops were compared");
    }

    /** On lattices too large to walk every loop the two programs agree, which share no bound. */
    @Test
    void plainAndBoundedProgramAgree() {
        Random random = new Random(5);
        int loops = 0;
        int pieces = 0;
        for (int i = 0; i < 40; i++) {
            LatticeGraph graph = priced(Lattices.ragged(7 + random.nextInt(3), 6 + random.nextInt(4), random), random);
            List<PortPair> links = Lattices.links(graph);
            if (links.isEmpty() || BiconnectedBlock.all(graph).size() != 1) {
                continue;
            }
            BiconnectedBlock only = BiconnectedBlock.all(graph).get(0);
            List<PortPair> inside = links.stream()
                    .filter(p -> only.contains(p.from()) && only.contains(p.to()))
                    .toList();
            LoopProblem problem = problem(graph, inside.subList(0, 1));
            Answer<LoopSolution> plain = new ExactLaying(block(problem)).solve();
            Answer<LoopSolution> bounded = new BoundedLaying(block(problem)).solve();
            assertEquals(plain.getClass(), bounded.getClass());
            if (plain.value().isPresent()) {
                assertEquals(plain.value().orElseThrow().objective(), proved(problem, bounded));
                loops++;
                pieces += plain.value().orElseThrow().objective() % 100 == 0 ? 0 : 1;
            }
        }
        assertTrue(loops > 15 && pieces > 8, loops + " loops, " + pieces + " with parts of a turn");
    }

    /** Prices of 0.5 to 4 turns, ends of straight pieces of up to 1.2, short pieces of up to three places at up to 0.9 more. */
    private static LatticeGraph priced(LatticeGraph graph, Random random) {
        return graph.copy()
                .turnCost(100)
                .price(50 + random.nextInt(351))
                .straightCost(new StraightCost(random.nextInt(4) * random.nextInt(40), extra(random)))
                .build();
    }

    private static List<Integer> extra(Random random) {
        return random.ints(random.nextInt(4), 0, 90).boxed().toList();
    }

    private static LoopProblem problem(LatticeGraph graph, List<PortPair> ports) {
        return new LoopProblem(graph, ports, ALONG_X, WorkLimit.standard());
    }

    private static BlockProblem block(LoopProblem problem) {
        return new BlockProblem(problem, BiconnectedBlock.all(problem.graph()).get(0), problem.ports());
    }

    private static boolean compare(LatticeGraph graph, List<PortPair> ports) {
        LoopProblem problem = problem(graph, ports);
        EveryLoop.Rating best = new EveryLoop(problem).best();
        Answer<LoopSolution> solved = new LoopSolver().solve(problem);
        if (best == null) {
            assertInstanceOf(Answer.None.class, solved);
            return false;
        }
        assertEquals(best.objective(), proved(problem, solved));
        assertEquals(best, new EveryLoop(problem).rating(solved.value().orElseThrow()));
        boolean inside = ports.stream()
                .allMatch(p -> BiconnectedBlock.all(graph).get(0).contains(p.from())
                        && BiconnectedBlock.all(graph).get(0).contains(p.to()));
        if (inside) {
            assertEquals(best.objective(), proved(problem, new BoundedLaying(block(problem)).solve()));
        }
        return true;
    }

    private static long proved(LoopProblem problem, Answer<LoopSolution> outcome) {
        LoopSolution solution = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, solution));
        assertTrue(solution.isProvedBest());
        return solution.objective();
    }
}
