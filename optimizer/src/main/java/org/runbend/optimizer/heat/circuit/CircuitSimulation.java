package org.runbend.optimizer.heat.circuit;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;

/**
 * A circuit over time by explicit steps: one node of coolant, one of water, the floor in layers. Room and outside stay as they are, so
 * a swing is the floor's own. The heat of pipes and heater outside the coolant is left out.
 */
public final class CircuitSimulation {
    private static final int MINUTE = 60;
    private static final double LONGEST = 1;
    private static final double LAST = 2.0 / 3;

    /** Minute by minute, and means of the last third. */
    public CircuitRun solve(CircuitProblem problem) {
        CircuitState state = new CircuitState(problem);
        int steps = (int) Math.ceil(MINUTE / Math.min(LONGEST, state.longestStep()));
        List<CircuitRun.Point> points = new ArrayList<>();
        points.add(state.point(0));
        int from = (int) (LAST * problem.minutes());
        CircuitState.Sums before = state.sums();
        for (int minute = 1; minute <= problem.minutes(); minute++) {
            for (int i = 0; i < steps; i++) {
                state.step((double) MINUTE / steps);
            }
            points.add(state.point(minute));
            if (minute == from) {
                before = state.sums();
            }
        }
        return run(problem, points, from, state.sums().less(before), MINUTE * (double) (problem.minutes() - from));
    }

    private static CircuitRun run(
            CircuitProblem problem, List<CircuitRun.Point> points, int from, CircuitState.Sums sums, double seconds) {
        List<CircuitRun.Point> last = points.subList(from + 1, points.size());
        DoubleSummaryStatistics surface =
                last.stream().mapToDouble(CircuitRun.Point::surface).summaryStatistics();
        return new CircuitRun(
                points,
                problem.area(),
                sums.open() / seconds,
                surface.getMax() - surface.getMin(),
                surface.getAverage(),
                last.stream().mapToDouble(CircuitRun.Point::sensor).average().orElse(0),
                sums.given() / seconds,
                sums.floor() / seconds,
                sums.cylinder() / seconds,
                sums.blowers() / seconds,
                sums.starts(),
                sums.openings());
    }
}
