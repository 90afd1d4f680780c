package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.lattice.StraightCost;
import org.runbend.optimizer.loop.LoopCost;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.verify.LoopVerifier;

/** A loop laid beginning with one that is known, held against the loop of the whole search. */
class KnownLoopTest {
    private static final PortPair PORT = new PortPair(1, 2, 0);

    /** 114 places with pillars, straight pieces priced: too wide for the exact program. */
    private static final LatticeGraph DEAR =
            Lattices.picturing("""
                    oooooooooooo
                    oooooooooooo
                    ooo.ooooo.oo
                    oooooooooooo
                    ooooooo.oooo
                    oo.ooooooooo
                    oooooooooooo
                    oooooo.ooooo
                    ooo.oooooooo
                    oooooooooooo
                    """).straightCost(new StraightCost(1, List.of())).build();

    private static LoopSolution sound(LoopProblem problem, LoopSolution loop) {
        assertEquals(List.of(), LoopVerifier.verify(problem, loop));
        assertTrue(loop.objectiveBound().orElse(0) <= loop.objective());
        return loop;
    }

    /** At another price it is no worse than what it began with, and its bound is none that the whole search would break. */
    @Test
    void itIsNoWorseAndItsBoundHolds() {
        LoopProblem dear = Lattices.problem(DEAR, PORT);
        LoopSolution known = sound(dear, new LoopSolver().solve(dear).value().orElseThrow());
        LatticeGraph cheap = DEAR.copy().price(1).build();
        LoopProblem problem = Lattices.problem(cheap, PORT);
        LoopSolution begun = sound(
                problem,
                new LoopSolver().solveFrom(problem, known.cycle()).value().orElseThrow());
        LoopSolution whole =
                sound(problem, new LoopSolver().solve(problem).value().orElseThrow());
        long before = LoopCost.ofShape(cheap, known.cycle()) + known.leftOut();
        assertTrue(begun.objective() <= before, "begun " + begun + ", known " + known);
        assertTrue(begun.objectiveBound().orElse(0) <= whole.objective(), "bound " + begun + ", whole " + whole);
        assertTrue(whole.objectiveBound().orElse(0) <= begun.objective(), "bound " + whole + ", begun " + begun);
    }

    /** Where the known nodes are no loop of this graph, the whole search is made. */
    @Test
    void nodesThatAreNoLoopAreNoHelp() {
        LoopProblem problem = Lattices.problem(Lattices.grid(4, 4), PORT);
        LoopSolution loop = sound(
                problem,
                new LoopSolver().solveFrom(problem, List.of(1, 9, 2)).value().orElseThrow());
        assertEquals(new LoopSolver().solve(problem).value().orElseThrow(), loop);
        assertTrue(loop.isProvedBest());
    }

    @Test
    void boundsGoOverWhereTheyHold() {
        List<Integer> cycle = List.of(0, 2, 3, 1);
        LoopSolution open = new LoopSolution(cycle, PORT, 8, 3, OptionalInt.empty(), 38, OptionalInt.of(20), List.of());
        LoopSolution proved = new LoopSolution(cycle, PORT, 6, 3, OptionalInt.of(6), 36, OptionalInt.of(36), List.of());
        assertEquals(OptionalInt.of(36), open.boundedBy(proved).objectiveBound());
        assertEquals(OptionalInt.of(6), open.boundedBy(proved).turnBound());
        assertEquals(proved, proved.boundedBy(open));
        LoopSolution elsewhere = new LoopSolution(
                cycle, new PortPair(2, 3, 1), 8, 2, OptionalInt.empty(), 28, OptionalInt.empty(), List.of());
        assertEquals(elsewhere, elsewhere.boundedBy(proved), "another port pair has bounds of its own");
        LoopSolution fuller =
                new LoopSolution(cycle, PORT, 12, 2, OptionalInt.empty(), 37, OptionalInt.empty(), List.of());
        assertEquals(OptionalInt.empty(), fuller.boundedBy(proved).turnBound(), "other places left out");
    }
}
