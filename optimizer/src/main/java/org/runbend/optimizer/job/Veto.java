package org.runbend.optimizer.job;

/** A word of the fitter's on where pipe may not, or must, go. Sizes in mm. */
public sealed interface Veto permits Veto.NoBend, Veto.NoPipe, Veto.MustRun {
    /** Path of the key in the job file that says so. */
    String key();

    /**
     * No part of a bend inside a circle; straight pipe may pass.
     *
     * @param key where it is written
     * @param at middle of the circle
     * @param radius of the circle, mm
     */
    record NoBend(String key, Point at, double radius) implements Veto {}

    /**
     * No pipe in a region; unlike a keep-out it may carry plates.
     *
     * @param key where it is written
     * @param region the region
     */
    record NoPipe(String key, Shape.Polygon region) implements Veto {}

    /**
     * Straight pipe along a whole line.
     *
     * @param key where it is written
     * @param from one end of the line
     * @param to its other end
     */
    record MustRun(String key, Point from, Point to) implements Veto {
        /** Direction of the line, degrees from the x axis, 0 to under 180. */
        public double direction() {
            return Veto.direction(from, to);
        }
    }

    /** Direction of a line without a front, degrees from the x axis, 0 to under 180. */
    static double direction(Point from, Point to) {
        double degrees = Math.toDegrees(Math.atan2(to.y() - from.y(), to.x() - from.x()));
        double half = ((degrees % 180) + 180) % 180;
        return half > 180 - 1e-9 ? 0 : half;
    }
}
