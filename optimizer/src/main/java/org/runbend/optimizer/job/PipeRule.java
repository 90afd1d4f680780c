package org.runbend.optimizer.job;

import java.util.List;

/** A word of the fitter's on where pipe may not, or must, go. Sizes in mm. */
public sealed interface PipeRule permits PipeRule.NoBend, PipeRule.NoPipe, PipeRule.MustRun, PipeRule.Kept {
    /** Path of the key in the job file that says so. */
    String key();

    /**
     * No part of a bend inside a circle; straight pipe may pass.
     *
     * @param key where it is written
     * @param at middle of the circle
     * @param radius of the circle, mm
     */
    record NoBend(String key, Point at, double radius) implements PipeRule {}

    /**
     * No pipe in a region; unlike a keep-out it may carry plates.
     *
     * @param key where it is written
     * @param region the region
     */
    record NoPipe(String key, Shape.Polygon region) implements PipeRule {}

    /**
     * Straight pipe along a whole line.
     *
     * @param key where it is written
     * @param from one end of the line
     * @param to its other end
     */
    record MustRun(String key, Point from, Point to) implements PipeRule {
        /** Direction of the line, degrees from the x axis, 0 to under 180. */
        public double direction() {
            return PipeRule.direction(from, to);
        }
    }

    /**
     * A part of the loop that is already routed: pipe follows its runs and bends. At both ends it is straight.
     *
     * @param key where it is written
     * @param points its ends and its corners, two or more
     */
    record Kept(String key, List<Point> points) implements PipeRule {
        /** Copies the points. */
        public Kept {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a part has two points or more, not " + points.size());
            }
        }

        /** Direction of its longest leg, the first of these, degrees from the x axis, 0 to under 180. */
        public double direction() {
            int longest = 1;
            for (int i = 2; i < points.size(); i++) {
                longest = leg(i) > leg(longest) ? i : longest;
            }
            return PipeRule.direction(points.get(longest - 1), points.get(longest));
        }

        private double leg(int i) {
            return points.get(i - 1).distance(points.get(i));
        }
    }

    /** Direction of a line without a front, degrees from the x axis, 0 to under 180. */
    static double direction(Point from, Point to) {
        double degrees = Math.toDegrees(Math.atan2(to.y() - from.y(), to.x() - from.x()));
        double half = ((degrees % 180) + 180) % 180;
        return half > 180 - 1e-9 ? 0 : half;
    }
}
