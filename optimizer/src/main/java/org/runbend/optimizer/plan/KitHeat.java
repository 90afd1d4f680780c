package org.runbend.optimizer.plan;

import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;

/**
 * What a plan gives off and needs.
 *
 * @param problem what was reckoned
 * @param solution what came of it
 */
public record KitHeat(HeatProblem problem, HeatSolution solution) {
    /** Heat into the room, W. */
    public double upward() {
        return solution.output().upward();
    }
}
