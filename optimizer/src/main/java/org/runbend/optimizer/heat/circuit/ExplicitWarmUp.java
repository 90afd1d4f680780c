package org.runbend.optimizer.heat.circuit;

import java.util.ArrayList;
import java.util.List;

/**
 * Warm-up of a plated floor by explicit finite differences in one dimension (textbook). Two-dimensional finite elements are met within
 * 0.5 K on the surface. Good contact is assumed; a film or a gap belongs into the resistance to the plane.
 */
public final class ExplicitWarmUp {
    private static final double LONGEST = 1;
    private static final int MINUTE = 60;

    /** Minute by minute. */
    public WarmUp solve(WarmUpProblem problem) {
        FloorColumn floor = new FloorColumn(problem.mass(), 1 / problem.mass().toPlane(), problem.start());
        int steps = (int) Math.ceil(MINUTE / Math.min(LONGEST, floor.longestStep()));
        double seconds = (double) MINUTE / steps;
        List<WarmUp.Point> points = new ArrayList<>();
        points.add(point(0, floor, problem));
        for (int minute = 1; minute <= problem.minutes(); minute++) {
            for (int i = 0; i < steps; i++) {
                double now = minute - 1 + (double) i / steps;
                floor.step(seconds, problem.coolantAt(now), true, problem.room(), problem.outside());
            }
            points.add(point(minute, floor, problem));
        }
        return new WarmUp(points);
    }

    private static WarmUp.Point point(int minute, FloorColumn floor, WarmUpProblem problem) {
        return new WarmUp.Point(minute, floor.surface(problem.room()), floor.plate(), problem.coolantAt(minute));
    }
}
