package org.runbend.optimizer.channel;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;

/**
 * A floor in which a sensor is to lie. Sizes in mm, seen from above.
 *
 * @param outline corners of the floor
 * @param keepOuts what its conduit keeps off
 * @param below what lies under the floor, where no hole is drilled
 * @param loops the pipe, with the slots at its holes
 * @param plates where plates lie
 * @param port where the conduit begins, or as near to it as can be
 * @param size distances
 */
public record SensorProblem(
        List<Point> outline,
        List<KeepOut> keepOuts,
        List<List<Point>> below,
        List<Breakdown> loops,
        List<Plate> plates,
        Point port,
        Size size) {
    /** Width of the conduit's groove, mm: common practice, a lead with its end of 6 to 8 mm is drawn through. */
    public static final double CONDUIT = 12;

    /** From the sensor to the nearest bend, mm: own choice, two thirds of a common spacing. */
    public static final double FROM_BEND = 100;

    /** Air between conduit and things on the floor, mm: common practice for what is routed by hand. */
    public static final double AIR = 5;

    /** The sensor lies so far inside the edge of its plate, half the conduit and a little: own choice. */
    public static final double UNDER = 8;

    /** Of the cable, what is left beyond the port for the way to its box, mm: own choice. */
    public static final double LEFT = 300;

    /** Copies the lists. */
    public SensorProblem {
        outline = List.copyOf(outline);
        keepOuts = List.copyOf(keepOuts);
        below = below.stream().map(List::copyOf).toList();
        loops = List.copyOf(loops);
        plates = List.copyOf(plates);
    }

    /**
     * A piece of plate.
     *
     * @param corners its four corners
     * @param from start of its middle line
     * @param to end of it
     * @param grooves 1, or 2 with the middle line between them
     */
    public record Plate(List<Point> corners, Point from, Point to, int grooves) {
        /** Copies the corners. */
        public Plate {
            corners = List.copyOf(corners);
        }

        /** Across its middle line. */
        public double width() {
            return corners.get(1).distance(corners.get(2));
        }
    }

    /**
     * Distances.
     *
     * @param spacing of the pipe
     * @param groove half the width of its groove at bends
     * @param web what must stay between two grooves
     * @param cable of the sensor; infinite where nobody knows
     */
    public record Size(double spacing, double groove, double web, double cable) {
        /** From the middle of the conduit to the pipe's centreline. */
        public double fromPipe() {
            return groove + web + CONDUIT / 2;
        }
    }
}
