package org.runbend.optimizer.plates;

import java.util.List;
import java.util.Optional;

/**
 * Where a row of pieces can lie: on one stretch, or for twin-groove plates on two neighbouring ones of equal length.
 *
 * @param first the stretch, pieces lie from its start on
 * @param second the part of the other run beside it, for twin-groove plates
 * @param opposed true when the second run goes the other way
 */
record Strip(PlateStretch first, Optional<PlateStretch> second, boolean opposed) {
    static Strip single(PlateStretch stretch) {
        return new Strip(stretch, Optional.empty(), false);
    }

    double length() {
        return first.length();
    }

    /** The places of a piece that begins {@code at} mm from the strip's start, one for each groove. */
    List<PlatePiece.Place> places(double at, double length) {
        PlatePiece.Place own = new PlatePiece.Place(first.loop(), first.element(), first.from() + at);
        if (second.isEmpty()) {
            return List.of(own);
        }
        PlateStretch s = second.get();
        double from = opposed ? s.to() - at - length : s.from() + at;
        return List.of(own, new PlatePiece.Place(s.loop(), s.element(), from));
    }
}
