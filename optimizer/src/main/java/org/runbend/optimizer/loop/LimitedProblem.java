package org.runbend.optimizer.loop;

import java.util.Objects;

/**
 * One loop of limited length to be laid: the most useful one that passes no more nodes than its pipe allows.
 *
 * @param problem the loop without the limit
 * @param mostNodes nodes that the loop may pass, 4 or more
 */
public record LimitedProblem(LoopProblem problem, int mostNodes) {
    /** Checks the parts. */
    public LimitedProblem {
        Objects.requireNonNull(problem, "problem");
        if (mostNodes < 4) {
            throw new IllegalArgumentException("mostNodes (" + mostNodes + ") must be at least 4");
        }
    }
}
