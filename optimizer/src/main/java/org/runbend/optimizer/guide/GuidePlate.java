package org.runbend.optimizer.guide;

import java.util.List;
import org.runbend.catalog.product.GuideBush;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.job.Point;

/**
 * A guide: a plate with its lower left corner at 0, 0 and slots through it. Sizes in mm.
 *
 * @param problem what it was wanted for
 * @param cutter diameter of the cutter that goes with it
 * @param bush the bush that goes with it
 * @param width along x
 * @param height along y
 * @param axis height of the straight slot's middle line; that far the lower edge of the plate lies from the run it makes
 * @param slots slots that the bush runs in
 * @param handHoles closed lines to hold the plate by
 * @param marks lines to lay the plate by
 * @param letters words on the plate
 */
public record GuidePlate(
        GuideProblem problem,
        double cutter,
        GuideBush bush,
        double width,
        double height,
        double axis,
        List<Slot> slots,
        List<List<Corner>> handHoles,
        List<Mark> marks,
        List<Letters> letters) {
    /** Copies the lists. */
    public GuidePlate {
        slots = List.copyOf(slots);
        handHoles = handHoles.stream().map(List::copyOf).toList();
        marks = List.copyOf(marks);
        letters = List.copyOf(letters);
    }

    /** What a slot is wider than the channel it makes. */
    public double wider() {
        return bush.outer() - cutter;
    }

    /** How far the cutter must reach below the base of the router for the whole depth. */
    public double reach() {
        return problem.thickness() + problem.groove().depth();
    }

    /** What a slot makes. */
    public enum Kind {
        /** A straight run. */
        STRAIGHT,
        /** From a run into its neighbour. */
        RETURN_BEND,
        /** From a run into one square to it. */
        QUARTER_BEND,
        /** The round pocket where the pipe goes through the floor. */
        POCKET
    }

    /**
     * A slot.
     *
     * @param kind what it makes
     * @param way the middle line of the channel it makes; a run from a point to itself for a pocket
     * @param channel width of that channel
     * @param contour its edge, closed, anticlockwise
     * @param entry where the bush is set in and the cutter let down
     */
    public record Slot(Kind kind, List<Element> way, double channel, List<Corner> contour, Point entry) {
        /** Copies the lists. */
        public Slot {
            way = List.copyOf(way);
            contour = List.copyOf(contour);
        }
    }

    /**
     * A line to lay the plate by.
     *
     * @param from start
     * @param to end
     */
    public record Mark(Point from, Point to) {}

    /**
     * Words on the plate.
     *
     * @param at left end of the baseline
     * @param height of a capital
     * @param words capitals, digits and plain signs
     */
    public record Letters(Point at, double height, String words) {}
}
