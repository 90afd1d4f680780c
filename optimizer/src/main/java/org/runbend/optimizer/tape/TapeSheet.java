package org.runbend.optimizer.tape;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * What a person can check on a floor with a tape. Lengths in mm; corners anticlockwise, as seen from above.
 *
 * @param corners named corners
 * @param named whether the names are the customer's own; else they are letters that begin at the lower left
 * @param sides from each corner to the next one
 * @param diagonals between corners, where a tape can be laid on the floor; longest first
 * @param width size over all along x
 * @param height size over all along y
 * @param keepOuts one for each keep-out of the job, in its order
 * @param unheated one for each unheated region of the job, in its order
 * @param below one for each thing under the floor, in its order
 * @param supports one for each support of the job, in its order
 * @param marks one for each mark of the job, in its order
 * @param port where flow and return come through
 * @param holes where pipe goes through, given or proposed
 */
public record TapeSheet(
        List<Corner> corners,
        boolean named,
        List<Side> sides,
        List<Diagonal> diagonals,
        double width,
        double height,
        List<Thing> keepOuts,
        List<Thing> unheated,
        List<Thing> below,
        List<Thing> supports,
        List<Thing> marks,
        Thing port,
        List<Thing> holes) {
    /** What lies outside a side by less lies at it, mm: no tape tells the two apart at a rough wall. */
    public static final double AT_WALL = 2;

    /** Copies the lists. */
    public TapeSheet {
        holes = List.copyOf(holes);
        corners = List.copyOf(corners);
        sides = List.copyOf(sides);
        diagonals = List.copyOf(diagonals);
        keepOuts = List.copyOf(keepOuts);
        unheated = List.copyOf(unheated);
        below = List.copyOf(below);
        supports = List.copyOf(supports);
        marks = List.copyOf(marks);
    }

    /** Whether all sides are straight and lie along x or y, so that a tape finds the sizes over all, within a mm. */
    public boolean isSquare() {
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i).at();
            Point b = corners.get((i + 1) % corners.size()).at();
            boolean aslant = Math.abs(a.x() - b.x()) > 1 && Math.abs(a.y() - b.y()) > 1;
            if (aslant || sides.get(i).isCurved()) {
                return false;
            }
        }
        return true;
    }

    /**
     * A corner that a person can put a tape to. The ends of chords on a curve are none.
     *
     * @param name a letter, or what the customer calls it
     * @param index its place in the outline of the job
     * @param at where it lies
     */
    public record Corner(String name, int index, Point at) {}

    /**
     * The side from a corner to the next one.
     *
     * @param from name of a corner
     * @param to name of the next one
     * @param length straight from corner to corner
     * @param rise how far a curved side bulges off that straight line; 0 if it is straight, negative inwards
     * @param crest the point of the side that bulges most; its middle if it is straight
     */
    public record Side(String from, String to, double length, double rise, Point crest) {
        /** Whether the side is a curve. */
        public boolean isCurved() {
            return rise != 0;
        }
    }

    /**
     * The way from a corner across the floor to another one.
     *
     * @param from name of a corner
     * @param to name of another one
     * @param length straight
     */
    public record Diagonal(String from, String to, double length) {}

    /**
     * Where a thing lies.
     *
     * @param name what the job calls it
     * @param at its middle
     * @param ties two distances that fix it; one or none where no tape reaches
     */
    public record Thing(String name, Point at, List<Tie> ties) {
        /** Copies the list. */
        public Thing {
            ties = List.copyOf(ties);
        }
    }

    /**
     * A distance of a thing from a side, at right angles to it, or from a corner.
     *
     * @param from name of the corner, or of the side's first one
     * @param to name of the side's other corner; empty for a corner
     * @param distance to the middle of a round thing, to the nearest edge of another one; negative outside the side
     * @param foot where the tape begins
     * @param end where it ends
     */
    public record Tie(String from, String to, double distance, Point foot, Point end) {
        /** Whether it leads from a side. */
        public boolean isFromSide() {
            return !to.isEmpty();
        }
    }
}
