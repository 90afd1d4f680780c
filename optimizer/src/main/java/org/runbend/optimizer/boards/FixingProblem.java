package org.runbend.optimizer.boards;

import java.util.List;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * A cover to be fixed. Sizes in mm, seen from above.
 *
 * @param cover its parts, lids of hatches among them
 * @param base wooden parts under it that hold screws; none where foam lies there
 * @param supports ribs, battens and joists, which hold screws where no wood lies over them
 * @param cutouts what goes through layers
 * @param loops the pipe, with the slots at its holes
 * @param below what lies under the floor, where nobody drills
 * @param conduit the way of the sensor's lead, if there is one
 * @param size thicknesses, distances and screws
 */
public record FixingProblem(
        List<Part> cover,
        List<Part> base,
        List<Support> supports,
        List<Cutout> cutouts,
        List<Breakdown> loops,
        List<List<Point>> below,
        List<Point> conduit,
        Size size) {
    /** From a screw to the pipe's centreline, mm: as asked. */
    public static final double FROM_PIPE = 30;

    /** From a screw to the edge of its cover board, mm: common practice for plywood of 9 to 15 mm. */
    public static final double FROM_EDGE = 15;

    /** From a screw to the edge of what holds it, mm: own choice. */
    public static final double FROM_BASE_EDGE = 10;

    /** From a screw to slots, things under the floor and openings, mm: own choice, what a drill wanders. */
    public static final double FROM_THINGS = 10;

    /** From a screw to the middle of the sensor's conduit, mm: half a conduit of 12 mm and what a drill wanders. */
    public static final double FROM_CONDUIT = 16;

    /** Least distance between two screws, mm: own choice, so that the ply does not split. */
    public static final double LEAST_APART = 40;

    /** A tip ends so far above the underside of what holds it, mm: own choice. */
    public static final double TIP = 2;

    /** What a screw must reach into what holds it, mm: own choice, two thirds of a common cover. */
    public static final double LEAST_HOLD = 8;

    /** Copies the lists. */
    public FixingProblem {
        cover = List.copyOf(cover);
        base = List.copyOf(base);
        supports = List.copyOf(supports);
        cutouts = List.copyOf(cutouts);
        loops = List.copyOf(loops);
        below = below.stream().map(List::copyOf).toList();
        conduit = List.copyOf(conduit);
    }

    /**
     * Thicknesses, distances and screws.
     *
     * @param cover thickness of the cover
     * @param under what lies under it: the wooden base, or everything where supports stand beside foam
     * @param apart greatest distance between neighbouring screws
     * @param screws lengths at hand, shortest first; none where the cover is not screwed
     */
    public record Size(double cover, double under, double apart, List<Double> screws) {
        /** Copies the list. */
        public Size {
            screws = List.copyOf(screws);
        }

        /** The middle of a square of four screws is so far from each: no place of a board should be farther from one. */
        public double reach() {
            return apart / Math.sqrt(2);
        }
    }
}
