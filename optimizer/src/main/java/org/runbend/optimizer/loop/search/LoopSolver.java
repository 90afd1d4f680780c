package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.loop.LoopListener;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Lays one closed loop of least turns plus prices of nodes left out.
 *
 * <p>Method: an exact dynamic program over the frontier of a node order. The work grows about threefold with each link
 * that is open at the widest place; beyond some width the duals of a linear program say which states cannot lead to a
 * good loop. What is not proved within the work limit has no bound. Where port pairs lie in several biconnected blocks,
 * the block that is worth most (sum of prices) is laid.
 */
public final class LoopSolver {
    private final LoopListener listener;

    /** A solver that nobody listens to; every limit comes with the problem. */
    public LoopSolver() {
        this(LoopListener.SILENT);
    }

    /** A solver that tells of better loops as it finds them. */
    public LoopSolver(LoopListener listener) {
        this.listener = Objects.requireNonNull(listener, "listener");
    }

    /**
     * Lays the loop, or says why not.
     *
     * @throws java.util.concurrent.CancellationException soon after the thread is interrupted; the thread stays
     *     interrupted
     */
    public Answer<LoopSolution> solve(LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return Answer.none("no port pair lies on a ring of linked nodes");
        }
        for (PortBlock block : blocks) {
            Answer<LoopSolution> outcome = lay(block.blockProblem(problem));
            if (!(outcome instanceof Answer.None<LoopSolution>)) {
                return outcome;
            }
        }
        return Answer.none("every ring through a port pair needs a bend that is forbidden");
    }

    /**
     * Lays the loop beginning with one that is known, which may have been laid for other prices or another preference: on narrow
     * floors as well as {@link #solve}, on wide ones it is made better window by window and no more is tried, so that it takes a
     * fraction of the work.
     *
     * @param cycle the nodes of the known loop in order; one that is none on this graph is no help
     */
    public Answer<LoopSolution> solveFrom(LoopProblem problem, List<Integer> cycle) {
        for (PortBlock block : PortBlock.of(problem)) {
            BlockProblem blockProblem = block.blockProblem(problem);
            boolean wide = !problem.graph().isStiff() && !blockProblem.isNarrow() && blockProblem.isRepresentable();
            if (wide && isLoop(problem, cycle) && blockProblem.legs(cycle).length > 0) {
                return new BoundedLaying(blockProblem, listener).solveFrom(cycle);
            }
        }
        return solve(problem);
    }

    private static boolean isLoop(LoopProblem problem, List<Integer> cycle) {
        LatticeGraph graph = problem.graph();
        int size = cycle.size();
        boolean linked = cycle.stream().allMatch(node -> node < graph.size())
                && IntStream.range(0, size).allMatch(i -> graph.linked(cycle.get(i), cycle.get((i + 1) % size)));
        int from = cycle.get(0);
        int to = cycle.get(size - 1);
        return linked
                && problem.ports().stream()
                        .anyMatch(p -> (p.from() == from && p.to() == to) || (p.from() == to && p.to() == from));
    }

    private Answer<LoopSolution> lay(BlockProblem blockProblem) {
        if (blockProblem.problem().graph().isStiff()) {
            return blockProblem.isRepresentable()
                    ? new StiffLaying(blockProblem).solve()
                    : blockProblem.tooWide("no state was tried");
        }
        if (blockProblem.isNarrow()) {
            return new ExactLaying(blockProblem, listener).solve();
        }
        if (!blockProblem.isRepresentable()) {
            return blockProblem.tooWide("no state was tried");
        }
        return new BoundedLaying(blockProblem, listener).solve();
    }
}
