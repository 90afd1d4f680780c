package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.verify.LoopVerifier;

/** Grids up to 6 x 6 with up to two nodes missing, against {@link LeastLoop}, which walks paths. */
class GridsWithHolesTest {
    /** The walker itself against {@link EveryLoop}, which gives nothing up. */
    @Test
    void walkersAgree() {
        for (String drawing : drawings(4, 4)) {
            LatticeGraph graph = Lattices.picture(drawing);
            for (PortPair port : Lattices.links(graph).subList(0, 2)) {
                EveryLoop.Rating best = new EveryLoop(Lattices.problem(graph, port)).best();
                OptionalInt expected = best == null ? OptionalInt.empty() : OptionalInt.of((int) best.objective());
                assertEquals(expected, new LeastLoop(graph, port).objective(), drawing);
            }
        }
    }

    @Test
    void everyGridAndEveryPlacement() {
        Random random = new Random(66);
        int loops = 0;
        for (int columns = 1; columns <= 6; columns++) {
            for (int rows = 1; rows <= 6; rows++) {
                for (String drawing : drawings(columns, rows)) {
                    loops += compare(drawing, random) ? 1 : 0;
                }
            }
        }
        assertTrue(loops > 3500, "only " + loops + " loops were compared");
    }

    /** The whole grid first, then every way to take one node or two. */
    private static List<String> drawings(int columns, int rows) {
        String whole = "o".repeat(columns).concat("\n").repeat(rows);
        List<String> drawings = new ArrayList<>(List.of(whole));
        for (int a = 0; a < whole.length(); a++) {
            for (int b = a; b < whole.length(); b++) {
                if (whole.charAt(a) == 'o' && whole.charAt(b) == 'o') {
                    StringBuilder holed = new StringBuilder(whole);
                    holed.setCharAt(a, '.');
                    holed.setCharAt(b, '.');
                    drawings.add(holed.toString());
                }
            }
        }
        return drawings;
    }

    /** Through one link drawn by lot; whether there is a loop. */
    private static boolean compare(String drawing, Random random) {
        LatticeGraph graph = Lattices.picture(drawing);
        List<PortPair> links = Lattices.links(graph);
        if (links.isEmpty()) {
            return false;
        }
        PortPair port = links.get(random.nextInt(links.size()));
        OptionalInt expected = new LeastLoop(graph, port).objective();
        LoopProblem problem = Lattices.problem(graph, port);
        Answer<LoopSolution> outcome = new LoopSolver().solve(problem);
        if (expected.isEmpty()) {
            assertInstanceOf(Answer.None.class, outcome, drawing);
            return false;
        }
        LoopSolution loop = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, loop), drawing);
        assertEquals(expected.getAsInt(), loop.objective(), () -> drawing + port);
        assertEquals(expected, loop.objectiveBound(), drawing);
        return true;
    }
}
