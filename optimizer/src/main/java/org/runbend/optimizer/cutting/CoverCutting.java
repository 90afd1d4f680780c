package org.runbend.optimizer.cutting;

/** Work in progress. */
public final class CoverCutting {
    /** The answer to a problem. */
    public CoverAnswer solve(CoverProblem problem) {
        return new Impossible("not there yet: " + problem, false);
    }
}
