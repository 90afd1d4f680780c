package org.runbend.optimizer.cutting;

/** Work in progress. */
public final class RunByRunCutting {
    /** The answer to a problem. */
    public CoverAnswer solve(CoverProblem problem) {
        throw new UnsupportedOperationException("not there yet: " + problem);
    }
}
