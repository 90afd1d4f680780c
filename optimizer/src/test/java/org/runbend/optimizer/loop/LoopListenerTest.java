package org.runbend.optimizer.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

/** What can be heard of a solver at work, and how it is stopped. */
class LoopListenerTest {
    /** 24 x 20 nodes with a hole: too wide for the plain program, and for passes within so little work. */
    private static LoopProblem wide() {
        String full = "o".repeat(24) + "\n";
        String pierced = "o".repeat(10) + "..." + "o".repeat(11) + "\n";
        LatticeGraph graph = Lattices.picturing(full.repeat(9) + pierced.repeat(2) + full.repeat(9))
                .build();
        PortPair port = Lattices.links(graph).get(0);
        return new LoopProblem(graph, List.of(port), Preference.longRuns(), new WorkLimit(2_000, 300_000));
    }

    @Test
    void eachLoopToldIsBetterAndTheLastIsTheAnswer() {
        List<TradeOff> told = new ArrayList<>();
        LoopSolution loop = assertInstanceOf(LoopOutcome.Found.class, new LoopSolver(told::add).solve(wide()))
                .solution();
        assertTrue(!told.isEmpty(), "nothing was told");
        TradeOff last = told.get(told.size() - 1);
        assertEquals(loop.turns(), last.turns());
        assertEquals(loop.leftOut(), last.leftOut());
    }

    @Test
    void anInterruptedThreadStopsAndStaysInterrupted() {
        Thread.currentThread().interrupt();
        assertThrows(CancellationException.class, () -> new LoopSolver().solve(wide()));
        assertTrue(Thread.interrupted(), "the flag was swallowed");
    }
}
