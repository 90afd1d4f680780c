package org.runbend.optimizer.plan;

import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;

/**
 * What a plan gives off and needs.
 *
 * @param problem what was reckoned
 * @param solution what came of it
 * @param value what a place of the floor is worth against a bend
 * @param wallToWall what the floor would give with pipe in plates from wall to wall, W
 */
public record KitHeat(HeatProblem problem, HeatSolution solution, PlaceValue value, double wallToWall) {
    /** Heat into the room, W. */
    public double upward() {
        return solution.output().upward();
    }

    /** Heat into the room against that of a floor in plates from wall to wall; 0 where such a floor would give none. */
    public double share() {
        return wallToWall > 0 ? upward() / wallToWall : 0;
    }
}
