package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.OptionalInt;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Lays the loop of one block for pipe that cannot turn twice in a row but where a return bend has room: by the frontier
 * program with what each link's earlier end did; first with a beam for a ceiling, then without loss. If the work limit
 * comes first, the beam's loop is the answer, without bounds.
 */
final class StiffLaying {
    /** States a layer of the first beam: chosen, not measured. */
    private static final int BEAM = 12_000;

    /** States a layer of the pass that proves: chosen, not measured. */
    private static final int MOST_STATES = 300_000;

    /** The same in all layers: chosen, not measured. */
    private static final long MOST_IN_ALL = 8_000_000;

    private final BlockProblem blockProblem;

    StiffLaying(BlockProblem blockProblem) {
        this.blockProblem = blockProblem;
    }

    Answer<LoopSolution> solve() {
        StiffSweep beam = new StiffSweep(blockProblem, StiffSweep.NONE);
        beam.run(BEAM, Long.MAX_VALUE);
        StiffSweep exact = beam;
        if (beam.truncated()) {
            exact = new StiffSweep(blockProblem, beam.best());
            exact.run(MOST_STATES, MOST_IN_ALL);
        }
        if (!exact.truncated() && exact.best() == StiffSweep.NONE) {
            return Answer.none("the pipe is too stiff for every ring through a port pair");
        }
        StiffSweep found = exact.best() <= beam.best() && exact.best() < StiffSweep.NONE ? exact : beam;
        if (found.best() == StiffSweep.NONE) {
            return blockProblem.tooWide("no loop for pipe as stiff as this was met");
        }
        int[] legs = found.trace();
        if (exact.truncated()) {
            return Answer.found(blockProblem.solution(legs, OptionalInt.empty(), OptionalInt.empty(), List.of()));
        }
        OptionalInt turnBound = blockProblem.turnBound(exact.best(), blockProblem.trace(legs));
        return Answer.found(blockProblem.solution(legs, turnBound, OptionalInt.of((int) exact.best()), List.of()));
    }
}
