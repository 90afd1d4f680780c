package org.runbend.optimizer.cutting;

import java.util.List;
import org.runbend.optimizer.answer.Answer;

/**
 * Plans by the number of different lengths that they may use, each number at least cost as far as found. Costs never rise
 * with the number; the list ends where more lengths save nothing.
 *
 * @param points one for each number of lengths, rising by one
 * @param free the plan without a limit of lengths, or why there is none
 */
public record FewLengthsCurve(List<Point> points, Answer<CoverSolution> free) {
    /**
     * The plan for a number of lengths.
     *
     * @param lengths how many different lengths are allowed
     * @param answer the plan, its bound valid for plans of so many lengths; or why there is none
     * @param reach the most that so many lengths cover of all stretches, as far as found, hundredths of mm
     */
    public record Point(int lengths, Answer<CoverSolution> answer, long reach) {}

    /** Copies the list. */
    public FewLengthsCurve {
        points = List.copyOf(points);
        Require.that(!points.isEmpty(), "%d points, 1 or more asked", 0);
    }

    /** The point for at most so many different lengths, the first one where that has more. */
    public Point at(int lengths) {
        Point at = points.get(0);
        for (Point p : points) {
            at = p.lengths() <= lengths ? p : at;
        }
        return at;
    }
}
