package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** Two passes that meet find a loop exactly where one pass does, however the slack is shared. */
class BidirectionalSweepTest {
    private static final int PLENTY = 1_000_000;

    private int loops;
    private int none;
    private int joined;

    @Test
    void raggedLatticesAgainstOnePass() {
        Random random = new Random(55);
        for (int i = 0; i < 150; i++) {
            LatticeGraph graph = Lattices.ragged(4 + random.nextInt(5), 4 + random.nextInt(5), random);
            compare(graph, random);
        }
        assertTrue(loops > 150 && none > 150, loops + " loops, " + none + " times none");
        assertTrue(joined > 50, "only " + joined + " loops came of two halves");
    }

    private void compare(LatticeGraph graph, Random random) {
        List<PortPair> links = Lattices.links(graph);
        if (links.isEmpty() || BiconnectedBlock.all(graph).size() != 1) {
            return;
        }
        BiconnectedBlock block = BiconnectedBlock.all(graph).get(0);
        int first = random.nextInt(links.size());
        List<PortPair> ports = links.subList(first, Math.min(links.size(), first + 1 + random.nextInt(4))).stream()
                .filter(port -> block.contains(port.from()) && block.contains(port.to()))
                .toList();
        if (ports.isEmpty()) {
            return;
        }
        LoopProblem problem = new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard());
        BlockProblem blockProblem = new BlockProblem(problem, block, ports);
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        BidirectionalSweep meeting = new BidirectionalSweep(blockProblem.frontier(), prices);
        for (int units = prices.first(); units <= prices.first() + 4; units += prices.step()) {
            ReducedCosts reducedCosts = program.reducedCosts(units);
            for (long turns = reducedCosts.shapeBound(); turns <= reducedCosts.shapeBound() + 4; turns += 2) {
                for (int eighths = 1; eighths <= 8; eighths += 1 + random.nextInt(3)) {
                    ask(blockProblem, prices, reducedCosts, turns, meeting, eighths);
                }
            }
        }
    }

    private void ask(
            BlockProblem blockProblem,
            PriceUnits prices,
            ReducedCosts reducedCosts,
            long turns,
            BidirectionalSweep meeting,
            int eighths) {
        BoundedSweep whole = new BoundedSweep(blockProblem.frontier(), prices, reducedCosts, turns, Frontier.PORT_OPEN);
        whole.runExactly(PLENTY, PLENTY);
        long back = reducedCosts.slack(turns) * eighths / 8;
        meeting.run(reducedCosts, turns, back, PLENTY, PLENTY, PLENTY);
        assertFalse(meeting.truncated() || whole.truncated());
        assertEquals(whole.found().length, meeting.found().length);
        if (whole.found().length == 0) {
            none++;
            return;
        }
        loops++;
        joined += meeting.early() > 0 && meeting.late() > 0 ? 1 : 0;
        LoopSolution loop = blockProblem.solution(meeting.found(), OptionalInt.empty(), OptionalInt.empty(), List.of());
        assertEquals(List.of(), LoopVerifier.verify(blockProblem.problem(), loop));
        assertTrue(loop.turns() <= turns);
        assertEquals(reducedCosts.units(), loop.leftOut());
    }
}
