package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.runbend.optimizer.job.Point;

/** Directions of a floor's long walls, as angles that a lattice may be turned by. */
final class LongWalls {
    /**
     * A wall counts that is this long as a share of the longest, and with all walls along or across it of the
     * outline; chosen, not measured.
     */
    private static final double OF_LONGEST = 0.4;

    /** Share of the outline: chosen, not measured. */
    private static final double OF_OUTLINE = 0.1;
    /** Walls this near to each other run alike, degrees. */
    private static final double ALIKE = 0.05;

    /** Directions told apart: chosen, not measured. */
    private static final int MOST = 2;

    private LongWalls() {}

    /** Walls that run alike or at right angles. */
    private static final class Kind {
        private final double angle;
        private final double longest;
        private double sum;

        Kind(double angle, double longest) {
            this.angle = angle;
            this.longest = longest;
        }
    }

    /** Degrees, over 0 and under 90, longest walls first; those of walls along the axes are not among them. */
    static List<Double> angles(List<Point> outline) {
        return longKinds(outline)
                .filter(k -> !alike(k.angle, 0))
                .sorted(Comparator.comparingDouble(k -> -k.sum))
                .limit(MOST)
                .map(k -> k.angle)
                .toList();
    }

    /** Whether long walls lie along the axes. */
    static boolean alongAxes(List<Point> outline) {
        return longKinds(outline).anyMatch(k -> alike(k.angle, 0));
    }

    private static Stream<Kind> longKinds(List<Point> outline) {
        List<Kind> kinds = kinds(outline);
        double whole = kinds.stream().mapToDouble(k -> k.sum).sum();
        double longest = kinds.stream().mapToDouble(k -> k.longest).max().orElse(0);
        return kinds.stream().filter(k -> k.longest >= OF_LONGEST * longest && k.sum >= OF_OUTLINE * whole);
    }

    /** Each kind has the direction of its longest wall. */
    private static List<Kind> kinds(List<Point> outline) {
        List<Integer> byLength = new ArrayList<>();
        for (int i = 0; i < outline.size(); i++) {
            byLength.add(i);
        }
        byLength.sort(Comparator.comparingDouble(i -> -length(outline, i)));
        List<Kind> kinds = new ArrayList<>();
        for (int i : byLength) {
            double angle = angle(outline, i);
            Kind kind = kinds.stream()
                    .filter(k -> alike(k.angle, angle))
                    .findFirst()
                    .orElseGet(() -> new Kind(angle, length(outline, i)));
            if (kind.sum == 0) {
                kinds.add(kind);
            }
            kind.sum += length(outline, i);
        }
        return kinds;
    }

    private static boolean alike(double a, double b) {
        double apart = Math.abs(a - b);
        return Math.min(apart, 90 - apart) <= ALIKE;
    }

    private static double length(List<Point> outline, int side) {
        return outline.get(side).distance(outline.get((side + 1) % outline.size()));
    }

    private static double angle(List<Point> outline, int side) {
        Point a = outline.get(side);
        Point b = outline.get((side + 1) % outline.size());
        double degrees = Math.toDegrees(Math.atan2(b.y() - a.y(), b.x() - a.x()));
        double angle = degrees - 90 * Math.floor(degrees / 90);
        return angle >= 90 ? 0 : angle;
    }
}
