package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.verify.LoopVerifier;

/**
 * A guard for floors of 400 to 1,080 places, which the brute force of other tests cannot reach: objective and bound are no
 * worse than those of 2026-11-26. A bound may only rise and an
 * objective only fall; whoever makes one worse has to say why here. About 25 s of one processor in all.
 */
class WideLoopsTest {
    /** Five bolts; between 96 and 98 of turns + 10 x left out it is open. */
    @Test
    void boltsOn409() {
        LoopSolution loop = laid(23, 18, "5,4 5,13 11,8 17,4 17,13");
        assertTrue(loop.objective() <= 98, "objective " + loop.objective());
        assertTrue(loop.objectiveBound().orElse(0) >= 96, "bound " + loop.objectiveBound());
    }

    @Test
    void anEllOf528IsProved() {
        StringBuilder corner = new StringBuilder();
        for (int x = 14; x < 30; x++) {
            for (int y = 12; y < 24; y++) {
                corner.append(x).append(',').append(y).append(' ');
            }
        }
        assertProved(40, laid(30, 24, corner.toString().strip()));
    }

    @Test
    void pillarsOn628AreProved() {
        assertProved(52, laid(32, 20, "6,5 6,6 7,5 7,6 15,9 15,10 16,9 16,10 24,13 24,14 25,13 25,14"));
    }

    /** 2 x min(36, 30) turns are the least of a loop through every place of a rectangle; the search knows nothing of that. */
    @Test
    void aSquareOf1080IsProved() {
        assertProved(2 * 30, laid(36, 30, ""));
    }

    private static void assertProved(int objective, LoopSolution loop) {
        assertEquals(objective, loop.objective());
        assertEquals(objective, loop.objectiveBound().orElse(0));
    }

    /** The loop through the port at the second and third place of the southern row. */
    private static LoopSolution laid(int columns, int rows, String missing) {
        List<String> gone = List.of(missing.split(" ", -1));
        StringBuilder drawing = new StringBuilder();
        for (int y = rows - 1; y >= 0; y--) {
            for (int x = 0; x < columns; x++) {
                drawing.append(gone.contains(x + "," + y) ? '.' : 'o');
            }
            drawing.append('\n');
        }
        LatticeGraph graph = Lattices.picture(drawing.toString());
        LoopProblem problem = Lattices.problem(graph, new PortPair(1, 2, 0));
        LoopSolution loop = new LoopSolver().solve(problem).value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, loop));
        return loop;
    }
}
