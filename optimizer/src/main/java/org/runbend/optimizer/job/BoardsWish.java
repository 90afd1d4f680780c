package org.runbend.optimizer.job;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * How the floor is to be made of boards. Sizes in mm.
 *
 * @param perimeterGap air to walls and things; empty: what is usual for the material
 * @param jointGap air between two boards
 * @param tolerance of the measured floor, left all round
 * @param scribe what edges of the outline have more instead of air, by the number of the edge, to be fitted by hand
 * @param fixing how the cover is held
 * @param screwsApart greatest distance between neighbouring screws
 * @param saw whether parts are cut with a track saw, from edge to edge; else by a machine
 */
public record BoardsWish(
        OptionalDouble perimeterGap,
        double jointGap,
        double tolerance,
        Map<Integer, Double> scribe,
        CoverFixing fixing,
        double screwsApart,
        boolean saw) {
    /** Air to walls of foam where the job says nothing, mm: common practice, 3 to 5. */
    public static final double FOAM_GAP = 4;

    /** Air to walls of wood where the job says nothing, mm: common practice, 5 to 10. */
    public static final double WOOD_GAP = 8;

    /** Air between boards where the job says nothing, mm: common practice, 0.5 to 1. */
    public static final double JOINT_GAP = 1;

    /** What a floor measured by tape is out where the job says nothing, mm: common practice. */
    public static final double TOLERANCE = 2;

    /** Copies the map. */
    public BoardsWish {
        scribe = Map.copyOf(scribe);
    }
}
