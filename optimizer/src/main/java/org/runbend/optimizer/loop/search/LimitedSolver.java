package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Depths;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.loop.LimitedProblem;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Lays a loop of limited length.
 *
 * <p>Method: bounded passes for so many nodes left out and more. The loop of fewest turns leaves its gaps where they save
 * most turns, which may be in the middle; so a second loop is laid that must pass every node far from walls, keep-outs and
 * unheated floor, and it is taken if it has hardly more turns. Turns at this number of nodes are bounded by what the first
 * passes proved; the objective is not, as a loop without the limit may be better.
 */
public final class LimitedSolver {
    /** Turns that gaps in their right place may cost: two return bends; chosen, not measured. */
    private static final int WORTH = 4;

    /** Rings of places from the wall in which gaps are sought: chosen, not measured. */
    private static final int MOST_DEPTH = 4;

    /** Loops laid for gaps in their right place: chosen, not measured. */
    private static final int MOST_TRIES = 6;

    /** A solver without settings; every limit comes with the problem. */
    public LimitedSolver() {}

    /** Lays the loop, or says why not. */
    public Answer<LoopSolution> solve(LimitedProblem limited) {
        Answer<LoopSolution> free = lay(limited, limited.problem());
        if (!(free instanceof Answer.Found<LoopSolution> found)) {
            return free;
        }
        LoopSolution best = found.it();
        LatticeGraph graph = limited.problem().graph();
        int[] depths = Depths.of(graph);
        int least = depthOfGaps(depths, graph, best.leftOut());
        for (int depth = least; depth <= Math.min(MOST_DEPTH, least + 1); depth++) {
            if (!hasGapBelow(graph, depths, best, depth)) {
                return free;
            }
            LoopProblem kept = wanting(limited.problem(), depths, depth);
            if (lay(new LimitedProblem(kept, limited.mostNodes()), kept) instanceof Answer.Found<LoopSolution> better
                    && better.it().objective()
                            <= best.objective()
                                    + WORTH * limited.problem().graph().turnCost()) {
                return Answer.found(withBound(better.it(), best));
            }
        }
        return free;
    }

    /** Unheated nodes lengthen the loop and are not counted as left out, so what they add is left out elsewhere. */
    private static Answer<LoopSolution> lay(LimitedProblem limited, LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return Answer.none("no port pair lies on a ring of linked nodes that the loop must pass");
        }
        BlockProblem blockProblem = blocks.get(0).blockProblem(problem);
        if (!blockProblem.isRepresentable()) {
            return blockProblem.tooWide("no state was tried");
        }
        int heated = (int) blocks.get(0).block().nodes().stream()
                .filter(n -> problem.graph().price(n) > 0)
                .count();
        int least = Math.max(0, heated - limited.mostNodes());
        Answer<LoopSolution> outcome = Answer.none("no loop is that short");
        for (int i = 0; i < MOST_TRIES; i++) {
            outcome = new LimitedLaying(blockProblem, least).solve();
            if (!(outcome instanceof Answer.Found<LoopSolution> found)) {
                return outcome;
            }
            int over = found.it().cycle().size() - limited.mostNodes();
            if (over <= 0) {
                return outcome;
            }
            least = Math.max(least, found.it().leftOut()) + over;
        }
        return outcome;
    }

    /** The least depth at which all gaps find room. */
    private static int depthOfGaps(int[] depths, LatticeGraph graph, int gaps) {
        for (int depth = 1; depth <= MOST_DEPTH; depth++) {
            int most = depth;
            long room = IntStream.range(0, depths.length)
                    .filter(n -> depths[n] <= most && graph.price(n) > 0)
                    .count();
            if (room >= gaps) {
                return depth;
            }
        }
        return MOST_DEPTH + 1;
    }

    private static boolean hasGapBelow(LatticeGraph graph, int[] depths, LoopSolution loop, int depth) {
        boolean[] served = new boolean[graph.size()];
        loop.cycle().forEach(n -> served[n] = true);
        return IntStream.range(0, graph.size()).anyMatch(n -> !served[n] && graph.price(n) > 0 && depths[n] > depth);
    }

    private static LoopProblem wanting(LoopProblem problem, int[] depths, int depth) {
        LatticeGraph graph = problem.graph();
        BiconnectedBlock block = PortBlock.of(problem).get(0).block();
        LatticeGraph.Builder copy = graph.copy();
        block.nodes().stream().filter(n -> depths[n] > depth).forEach(copy::want);
        return new LoopProblem(copy.build(), problem.ports(), problem.preference(), problem.limit());
    }

    private static LoopSolution withBound(LoopSolution loop, LoopSolution free) {
        OptionalInt bound = loop.leftOut() == free.leftOut() ? free.turnBound() : OptionalInt.empty();
        return new LoopSolution(
                loop.cycle(),
                loop.port(),
                loop.turns(),
                loop.leftOut(),
                bound,
                loop.objective(),
                OptionalInt.empty(),
                loop.pairs());
    }
}
