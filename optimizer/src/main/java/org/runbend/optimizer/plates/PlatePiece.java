package org.runbend.optimizer.plates;

import java.util.List;

/**
 * A piece of plate in its place.
 *
 * @param product part number of the plate
 * @param length mm
 * @param places where it lies: one place for a single-groove piece, two for a twin-groove one
 */
public record PlatePiece(String product, double length, List<Place> places) {
    /** Copies the list. */
    public PlatePiece {
        places = List.copyOf(places);
    }

    /**
     * Where a groove lies.
     *
     * @param loop index of the loop, from 0
     * @param element index of the run in the loop's breakdown, from 0
     * @param from distance of the piece's start from the run's start, mm
     */
    public record Place(int loop, int element, double from) {}
}
