package org.runbend.optimizer.cutting;

/** Work in progress. */
public final class PatternCutting {
    /** The answer to a problem. */
    public CuttingAnswer solve(CuttingProblem problem) {
        return new Impossible("not there yet: " + problem, false);
    }
}
