package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopVerifier;

class LoopSolverTest {
    @Test
    void twoByTwoIsOneSquare() {
        // Nodes 0 1 / 2 3; the only cycle is 0-1-3-2; laid from 0 to 1 it goes the long way round.
        LoopSolution solution = lay(Lattices.problem(Lattices.grid(2, 2), new PortPair(0, 1, 0)));
        assertEquals(List.of(0, 2, 3, 1), solution.cycle());
        assertEquals(4, solution.turns());
        assertEquals(0, solution.leftOut());
        assertEquals(OptionalInt.of(4), solution.turnBound());
    }

    @Test
    void twoByThreeIsTheRimWithFourTurns() {
        // Nodes 0 1 / 2 3 / 4 5; the rim serves all six; the port link (2, 4) is passed straight at 2 and turned at 4.
        LoopSolution solution = lay(Lattices.problem(Lattices.grid(2, 3), new PortPair(4, 2, 0)));
        assertEquals(List.of(4, 5, 3, 1, 0, 2), solution.cycle());
        assertEquals(4, solution.turns());
        assertEquals(4, solution.objective());
    }

    @Test
    void middleLinkOfTwoByThreeCostsTwoNodes() {
        // The link (2, 3) lies on the two unit squares only: four turns, two nodes left out at 10 each.
        LoopSolution solution = lay(Lattices.problem(Lattices.grid(2, 3), new PortPair(2, 3, 0)));
        assertEquals(4, solution.turns());
        assertEquals(2, solution.leftOut());
        assertEquals(24, solution.objective());
        assertEquals(OptionalInt.of(24), solution.objectiveBound());
    }

    @Test
    void oneRowHasNoLoop() {
        Answer<LoopSolution> outcome =
                new LoopSolver().solve(Lattices.problem(Lattices.grid(7, 1), new PortPair(2, 3, 0)));
        String reason = assertInstanceOf(Answer.None.class, outcome).reason();
        assertEquals("no port pair lies on a ring of linked nodes", reason);
    }

    @Test
    void forbiddenBendsCanLeaveNoLoop() {
        LatticeGraph.Builder builder = Lattices.picturing("oo\noo");
        builder.forbidBend(3, Heading.WEST, Heading.SOUTH);
        Answer<LoopSolution> outcome = new LoopSolver().solve(Lattices.problem(builder.build(), new PortPair(0, 1, 0)));
        assertInstanceOf(Answer.None.class, outcome);
    }

    @Test
    void aPortExcusesTheForbiddenCornersAtItsOwnEnds() {
        LatticeGraph.Builder builder = Lattices.picturing("oo\noo");
        builder.forbidBend(0, Heading.EAST, Heading.NORTH).forbidBend(1, Heading.NORTH, Heading.WEST);
        LatticeGraph graph = builder.build();
        LoopProblem problem = Lattices.problem(graph, new PortPair(2, 3, 0), new PortPair(1, 0, 5));
        LoopSolution solution = lay(problem);
        assertEquals(new PortPair(1, 0, 5), solution.port());
        assertEquals(4, solution.turns());
    }

    @Test
    void onlyThePortsRoomIsReachable() {
        // Two rooms of 3 x 2 joined by one link: a loop cannot pass it twice.
        LatticeGraph graph = Lattices.picture("ooo.ooo\nooooooo");
        LoopSolution solution = lay(Lattices.problem(graph, new PortPair(0, 1, 0)));
        assertEquals(6, solution.cycle().size());
        assertEquals(0, solution.leftOut());
        assertEquals(4, solution.objective());
    }

    @Test
    void theRoomWorthMoreIsLaid() {
        LatticeGraph graph = Lattices.picture("oo.oooo\noo.oooo");
        LoopSolution solution = lay(Lattices.problem(graph, new PortPair(0, 1, 0), new PortPair(2, 3, 1)));
        assertEquals(new PortPair(2, 3, 1), solution.port());
        assertEquals(8, solution.cycle().size());
    }

    @Test
    void freeNodesAreLeftOutWhenThatSavesTurns() {
        // The free node beside the 4 x 2 block would cost turns and is no loss; served nodes of price 10 would be.
        LatticeGraph graph = Lattices.picture(".00.\noooo\noooo");
        LoopSolution solution = lay(Lattices.problem(graph, new PortPair(0, 1, 0)));
        assertEquals(4, solution.turns());
        assertEquals(0, solution.leftOut());
        assertEquals(8, solution.cycle().size());
    }

    /**
     * The four-turn loop around the priced nodes would do but for the port, which is on a bump of free nodes: an L from
     * the priced end to the bump, corners (0,0) (5,0) (5,2) (4,2) (4,1) (0,1), takes 6; the second case is its mirror.
     */
    @ParameterizedTest
    @CsvSource({"....00....,oooo000000", "....00....,000000oooo"})
    void aCheaperLoopThatMissesThePortDoesNotCount(String bump, String row) {
        LatticeGraph graph = Lattices.picture(bump + "\n" + row + "\n" + row);
        LoopSolution solution = lay(Lattices.problem(graph, new PortPair(20, 21, 0)));
        assertEquals(6, solution.objective());
    }

    /**
     * Rectangles whose shorter side is even: 2 min(m, n) turns by teeth along the longer side; no square of side 2n does
     * with less than 4n (Jehn 2021, arXiv 2103.15778).
     */
    @ParameterizedTest
    @CsvSource({"4, 4", "6, 6", "8, 8", "7, 4", "9, 6", "16, 10", "26, 4", "18, 16", "40, 8", "26, 26"})
    void rectanglesNeedTwiceTheirShortSide(int columns, int rows) {
        LoopProblem problem = Lattices.problem(Lattices.grid(columns, rows), new PortPair(0, columns, 0));
        LoopSolution solution = lay(problem);
        assertEquals(0, solution.leftOut());
        assertEquals(2 * Math.min(columns, rows), solution.turns());
    }

    @Test
    void turnsComeInReturnBendsWhereTheyCan() {
        // 6 x 4 with 8 turns: teeth along x have three links of one step besides the port's; a spiral would have fewer.
        LoopProblem problem = new LoopProblem(
                Lattices.grid(6, 4),
                List.of(new PortPair(0, 6, 0)),
                new Preference(Axis.X, false, 1),
                WorkLimit.standard());
        assertEquals(8, lay(problem).turns());
        assertEquals(new EveryLoop(problem).best(), new EveryLoop(problem).rating(lay(problem)));
    }

    @Test
    void sameProblemSameLoop() {
        LoopProblem problem = Lattices.problem(Lattices.grid(9, 8), new PortPair(0, 1, 0), new PortPair(8, 7, 0));
        assertEquals(lay(problem), lay(problem));
    }

    @Test
    void aLimitThatIsTooLowLeavesTheBeamsLoopWithoutBounds() {
        LoopSolution solution = lay(withLimit(Lattices.grid(10, 10), new WorkLimit(200, 1_000_000)));
        assertEquals(OptionalInt.empty(), solution.turnBound());
        assertEquals(OptionalInt.empty(), solution.objectiveBound());
        assertFalse(solution.isProvedBest());
    }

    @Test
    void aLimitThatStopsEveryPassLeavesAMergedCover() {
        LoopSolution solution = lay(withLimit(Lattices.grid(16, 18), new WorkLimit(2000, 40)));
        assertTrue(solution.objectiveBound().orElseThrow() <= 32, "16 x 18 can be laid with 32 turns");
    }

    @Test
    void moreOpenLinksThanAStateHoldsIsSaidNotAnswered() {
        LoopProblem problem = withLimit(Lattices.grid(63, 63), WorkLimit.standard());
        String what = assertInstanceOf(Answer.Unknown.class, new LoopSolver().solve(problem))
                .reason();
        assertEquals("3969 nodes with up to 64 links open at once: no state was tried", what);
    }

    private static LoopProblem withLimit(LatticeGraph graph, WorkLimit limit) {
        return new LoopProblem(graph, List.of(new PortPair(0, 1, 0)), Preference.longRuns(), limit);
    }

    @Test
    void verifierSeesWrongCounts() {
        LoopProblem problem = Lattices.problem(Lattices.grid(3, 2), new PortPair(0, 1, 0));
        LoopSolution good = lay(problem);
        LoopSolution boasting = new LoopSolution(
                good.cycle(), good.port(), 4, 1, OptionalInt.empty(), 14, OptionalInt.empty(), List.of());
        assertEquals(
                List.of("leftOut is 0, not 1", "objective is 4, not 14"),
                LoopVerifier.verify(problem, boasting).stream()
                        .map(Finding::toString)
                        .toList());
        LoopSolution broken = new LoopSolution(
                List.of(0, 5, 4, 1), good.port(), 4, 0, OptionalInt.empty(), 4, OptionalInt.empty(), List.of());
        assertFalse(LoopVerifier.verify(problem, broken).isEmpty());
    }

    private static LoopSolution lay(LoopProblem problem) {
        Answer<LoopSolution> outcome = new LoopSolver().solve(problem);
        LoopSolution solution = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, solution));
        return solution;
    }
}
