package org.runbend.optimizer.heat.flow;

import org.runbend.optimizer.heat.coolant.BoilingPoint;
import org.runbend.optimizer.heat.coolant.Melinder2010;

/**
 * What height does to a filled circuit: nothing to the pump's head, but it sets the pressure to fill with, how far the hottest
 * point is from boiling, and where a header tank must sit. A closed circuit is filled to its height and 50 kPa (common
 * practice); an open tank adds its level only. The pump's own head at the hottest point is left out, which is the safe side.
 */
public final class StandingPressure {
    private static final double GRAVITY = 9.80665;
    private static final double ATMOSPHERE = 101.325;
    private static final double OVER_THE_TOP = 50;
    private static final double LEAST = 1;

    /** Pressures and margin. */
    public StandingSolution solve(StandingProblem problem) {
        Melinder2010 properties = new Melinder2010();
        double cold = properties.at(problem.mixture(), problem.coldest()).density();
        double hot = properties.at(problem.mixture(), problem.hottest()).density();
        double top = problem.closed() ? OVER_THE_TOP : 0;
        double fill = top + cold * GRAVITY * problem.rise() / 1000;
        double absolute = Math.max(LEAST, ATMOSPHERE + top + hot * GRAVITY * problem.height() / 1000);
        double boiling = new BoilingPoint().at(problem.mixture(), absolute);
        return new StandingSolution(fill, absolute, boiling, boiling - problem.hottest());
    }
}
