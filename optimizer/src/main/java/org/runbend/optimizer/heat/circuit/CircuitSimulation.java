package org.runbend.optimizer.heat.circuit;

import java.util.ArrayList;
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
        double given = 0;
        double intoFloor = 0;
        double open = 0;
        int starts = 0;
        int openings = 0;
        for (int minute = 1; minute <= problem.minutes(); minute++) {
            for (int i = 0; i < steps; i++) {
                state.step((double) MINUTE / steps);
            }
            points.add(state.point(minute));
            if (minute == from) {
                given = state.given();
                intoFloor = state.intoFloor();
                open = state.open();
                starts = state.starts();
                openings = state.openings();
            }
        }
        double seconds = MINUTE * (double) (problem.minutes() - from);
        List<CircuitRun.Point> last = points.subList(from + 1, points.size());
        return new CircuitRun(
                points,
                (state.open() - open) / seconds,
                last.stream().mapToDouble(CircuitRun.Point::surface).max().orElse(0)
                        - last.stream()
                                .mapToDouble(CircuitRun.Point::surface)
                                .min()
                                .orElse(0),
                last.stream().mapToDouble(CircuitRun.Point::surface).average().orElse(0),
                (state.given() - given) / seconds,
                (state.intoFloor() - intoFloor) / seconds,
                state.starts() - starts,
                state.openings() - openings);
    }
}
