package org.runbend.optimizer.boards;

import java.util.List;
import java.util.OptionalDouble;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Point;

/**
 * How the cover is held.
 *
 * @param problem what was asked
 * @param fixing how
 * @param length of the screws, mm; none where there are none
 * @param screws where they go
 * @param farthest no place of a cover board is farther from a screw of its board, mm; 0 where there are none
 * @param noScrew where nobody may screw: closed lines, a place is inside if an odd number of them go round it
 */
public record FixingPlan(
        FixingProblem problem,
        CoverFixing fixing,
        OptionalDouble length,
        List<Screw> screws,
        double farthest,
        List<List<Point>> noScrew) {
    /** Copies the lists. */
    public FixingPlan {
        screws = List.copyOf(screws);
        noScrew = noScrew.stream().map(List::copyOf).toList();
    }

    /**
     * A screw.
     *
     * @param board label of the cover board
     * @param at mm
     */
    public record Screw(String board, Point at) {}
}
