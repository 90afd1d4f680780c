package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
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

/** Loops of equal objective told apart, held against the exact choice among all of them. */
class TieSearchTest {
    private static final Preference WISH = new Preference(Axis.X, false, 2.0 / 3.0);
    private static final long MUCH = 10_000_000;

    private int floors;
    private int gained;
    private int best;

    /**
     * Floors narrow enough for the exact choice. From the first loop of least objective, which leaves the lower levels alone, the
     * windows must come to the sum of the exact choice nearly always, and never beyond it; a floor on which the exact
     * choice leaves another number of nodes out is no comparison.
     */
    @Test
    void windowsComeToTheExactChoice() {
        Random random = new Random(17);
        while (floors < 60) {
            LatticeGraph graph =
                    Lattices.crowded(Lattices.ragged(6 + random.nextInt(6), 5 + random.nextInt(3), random), random);
            List<BiconnectedBlock> blocks = BiconnectedBlock.all(graph);
            if (!blocks.isEmpty() && blocks.get(0).size() > 20) {
                compare(graph, blocks.get(0));
            }
        }
        assertTrue(gained > 20, "gained on " + gained);
        assertTrue(10 * best >= 9 * floors, "the exact choice met on " + best + " of " + floors);
    }

    private void compare(LatticeGraph graph, BiconnectedBlock block) {
        PortPair port = Lattices.links(graph).stream()
                .filter(p -> block.contains(p.from()) && block.contains(p.to()))
                .findFirst()
                .orElseThrow();
        LoopProblem problem = new LoopProblem(graph, List.of(port), WISH, WorkLimit.standard());
        BlockProblem blockProblem = new BlockProblem(problem, block, List.of(port));
        Sweep sweep = new Sweep(blockProblem.frontier(), blockProblem.encoding(), Sweep.NONE);
        sweep.runExactly(WorkLimit.standard());
        if (sweep.best() == Sweep.NONE) {
            return;
        }
        int[] first = sweep.trace();
        int[] exact = new BestOfEqual(blockProblem.frontier(), blockProblem.encoding(), WISH).choose(sweep);
        int[] found = search(blockProblem, first);
        LowerLevels lowerLevels = new LowerLevels(WISH, blockProblem.frontier(), 1);
        long value = lowerLevels.of(found);
        assertEquals(blockProblem.tradeOff(first), blockProblem.tradeOff(found), "turns and left out stay");
        assertEquals(List.of(), LoopVerifier.verify(problem, solution(blockProblem, found)));
        assertTrue(value <= lowerLevels.of(first), "worse than before");
        assertArrayEquals(found, search(blockProblem, first), "the same twice");
        if (blockProblem.tradeOff(exact).equals(blockProblem.tradeOff(found))) {
            floors++;
            gained += value < lowerLevels.of(first) ? 1 : 0;
            best += value == lowerLevels.of(exact) ? 1 : 0;
            assertTrue(value >= lowerLevels.of(exact), "beyond the exact choice");
        }
    }

    private static LoopSolution solution(BlockProblem blockProblem, int[] legs) {
        return blockProblem.solution(legs, OptionalInt.empty(), OptionalInt.empty(), List.of());
    }

    private static int[] search(BlockProblem blockProblem, int[] legs) {
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        return new TieSearch(blockProblem, prices, program.reducedCosts(EqualLoops.units(prices, legs)), MUCH)
                .improve(legs);
    }

    /** The ring of 4 x 2 nodes is the only loop there: 8 nodes, 4 of them corners, two sides of one link between corners. */
    @Test
    void lengthIsCountedAsByHand() {
        LatticeGraph graph = Lattices.grid(4, 2);
        BlockProblem blockProblem = new BlockProblem(
                new LoopProblem(graph, List.of(new PortPair(0, 1, 0)), Preference.longRuns(), WorkLimit.standard()),
                BiconnectedBlock.all(graph).get(0),
                List.of(new PortPair(0, 1, 0)));
        Sweep sweep = new Sweep(blockProblem.frontier(), blockProblem.encoding(), Sweep.NONE);
        sweep.runExactly(WorkLimit.standard());
        // (8 - 4) - 2 x 2/3 x (4 - 2) spacings, in thousandths, times a weight of 2 x 8 + 1
        long parts = -new LowerLevels(Preference.longRuns(), blockProblem.frontier(), 1).of(sweep.trace());
        assertEquals(1000 * (4 - 2 * 4 / 3.0), (double) parts / 17, 1.0);
    }

    /** Even heat keeps turns and places, and is never more uneven than what it began with. */
    @Test
    void evenHeatOnRandomFloors() {
        Random random = new Random(5);
        int more = 0;
        int laid = 0;
        while (laid < 12) {
            LatticeGraph graph = Lattices.ragged(9 + random.nextInt(4), 7, random);
            List<BiconnectedBlock> blocks = BiconnectedBlock.all(graph);
            if (blocks.isEmpty() || blocks.get(0).size() < 40) {
                continue;
            }
            PortPair port = Lattices.links(graph).stream()
                    .filter(p ->
                            blocks.get(0).contains(p.from()) && blocks.get(0).contains(p.to()))
                    .findFirst()
                    .orElseThrow();
            Answer<LoopSolution> straight = solve(graph, port, false);
            Answer<LoopSolution> even = solve(graph, port, true);
            assertEquals(straight.getClass(), even.getClass());
            if (straight instanceof Answer.Found<LoopSolution> s && even instanceof Answer.Found<LoopSolution> e) {
                assertEquals(s.it().objective(), e.it().objective());
                assertEquals(s.it().turns(), e.it().turns());
                WarmthSpread measure = new WarmthSpread(graph);
                double before = measure.of(s.it().cycle());
                double after = measure.of(e.it().cycle());
                assertTrue(after <= before, before + " -> " + after);
                more += after < before ? 1 : 0;
                laid++;
            }
        }
        assertTrue(more > 3, "more even on " + more);
    }

    private static Answer<LoopSolution> solve(LatticeGraph graph, PortPair port, boolean even) {
        Preference preference = new Preference(Axis.X, even, 2.0 / 3.0);
        return new LoopSolver().solve(new LoopProblem(graph, List.of(port), preference, WorkLimit.standard()));
    }

    /** A hairpin of two rows: flow and return lie beside each other everywhere, so each pair's mean is the same. */
    @Test
    void aHairpinIsEven() {
        LatticeGraph graph = Lattices.grid(20, 2);
        List<Integer> cycle = new ArrayList<>();
        for (int c = 0; c < 20; c++) {
            cycle.add(node(graph, c, 0));
        }
        for (int c = 19; c >= 0; c--) {
            cycle.add(node(graph, c, 1));
        }
        assertEquals(0, new WarmthSpread(graph).of(cycle), 1e-9);
    }

    /** One long row out and far away back: the warmth of lone pipe is spread evenly, standard deviation 1/sqrt(12). */
    @Test
    void rowsFarApartAreUneven() {
        LatticeGraph graph = Lattices.grid(30, 30);
        List<Integer> ring = new ArrayList<>();
        for (int c = 0; c < 30; c++) {
            ring.add(node(graph, c, 0));
        }
        for (int r = 1; r < 30; r++) {
            ring.add(node(graph, 29, r));
        }
        for (int c = 28; c >= 0; c--) {
            ring.add(node(graph, c, 29));
        }
        for (int r = 28; r >= 1; r--) {
            ring.add(node(graph, 0, r));
        }
        assertEquals(1 / Math.sqrt(12), new WarmthSpread(graph).of(ring), 0.01);
    }

    private static int node(LatticeGraph graph, int column, int row) {
        for (int n = 0; n < graph.size(); n++) {
            if (graph.column(n) == column && graph.row(n) == row) {
                return n;
            }
        }
        throw new IllegalArgumentException("no node");
    }
}
