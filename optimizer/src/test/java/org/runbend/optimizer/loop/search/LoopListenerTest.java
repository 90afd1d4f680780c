package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.TradeOff;
import org.runbend.optimizer.loop.WorkLimit;

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
        LoopSolution loop = new LoopSolver(told::add).solve(wide()).value().orElseThrow();
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

    /** Each stage for itself: covers, which run in native code, linear programs, beams, windows for ties and for even heat. */
    @Test
    void eachStageEndsWhenInterrupted() {
        LatticeGraph graph = Lattices.grid(10, 9);
        PortPair port = new PortPair(0, 1, 0);
        LoopProblem problem = new LoopProblem(graph, List.of(port), Preference.longRuns(), WorkLimit.standard());
        BlockProblem blockProblem = PortBlock.of(problem).get(0).blockProblem(problem);
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ReducedCosts reducedCosts = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices)
                .reducedCosts(prices.first());
        int[] ring = ring(blockProblem);
        stops(() -> new PatchedCover(blockProblem, 1).find());
        stops(() -> new LoopSketch().estimate(problem));
        stops(() -> new LoopSketch().objective(problem));
        stops(() -> new BidirectionalBeam(blockProblem.frontier(), prices).find(reducedCosts, 200, 10));
        stops(() -> new TieSearch(blockProblem, prices, reducedCosts, 1_000_000).improve(ring));
        stops(() -> new EvenSearch(blockProblem, prices, reducedCosts, 1_000_000).improve(ring));
    }

    /** The smallest loop through the port: four nodes. */
    private static int[] ring(BlockProblem blockProblem) {
        Frontier frontier = blockProblem.frontier();
        LatticeGraph graph = blockProblem.blockGraph().graph();
        int[] legs = new int[frontier.size()];
        for (int t = 0; t < legs.length; t++) {
            boolean east = graph.column(frontier.node(t)) == 1;
            boolean north = graph.row(frontier.node(t)) == 1;
            boolean near = graph.column(frontier.node(t)) < 2 && graph.row(frontier.node(t)) < 2;
            legs[t] = near ? (east ? 4 : 1) | (north ? 8 : 2) : 0;
        }
        return legs;
    }

    private static void stops(Runnable stage) {
        Thread.currentThread().interrupt();
        assertThrows(CancellationException.class, stage::run);
        assertTrue(Thread.interrupted(), "the flag was swallowed");
    }
}
