package org.runbend.optimizer.boards.nesting;

import java.util.List;

/**
 * Where each rectangle is cut.
 *
 * @param places a place for each item, in the order of the problem
 * @param boards how many boards are used
 * @param bound no packing of these rectangles uses fewer, proved
 */
public record NestingSolution(List<Place> places, int boards, int bound) {
    /** Copies the list. */
    public NestingSolution {
        places = List.copyOf(places);
    }

    /**
     * A place.
     *
     * @param board number of the board, from 0
     * @param x of its lower left corner on the board, mm
     * @param y of its lower left corner, mm
     * @param turned whether it lies turned by a quarter
     */
    public record Place(int board, double x, double y, boolean turned) {}

    /** Whether no packing is better. */
    public boolean isProvedBest() {
        return boards == bound;
    }
}
