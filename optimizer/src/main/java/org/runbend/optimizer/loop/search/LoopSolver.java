package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.Objects;
import org.runbend.optimizer.answer.Answer;
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
