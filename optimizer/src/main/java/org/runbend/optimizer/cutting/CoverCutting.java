package org.runbend.optimizer.cutting;

/** Work in progress. */
public final class CoverCutting {
    /** The answer to a problem. */
    public CoverAnswer solve(CoverProblem problem) {
        throw new UnsupportedOperationException("not there yet: " + problem);
    }
}
