package org.runbend.optimizer.plates;

import java.util.ArrayList;
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

    /** Whether a groove lies on the first stretch. */
    boolean holds(PlatePiece.Place place) {
        return place.loop() == first.loop()
                && place.element() == first.element()
                && place.from() >= first.from() - 1e-6
                && place.from() < first.to();
    }

    /** What is left of each stretch from a distance of the strip's start on. */
    List<PlateStretch> after(double at) {
        List<PlateStretch> left = new ArrayList<>();
        left.add(new PlateStretch(first.loop(), first.element(), first.from() + at, first.to()));
        second.ifPresent(s -> left.add(new PlateStretch(
                s.loop(), s.element(), opposed ? s.from() : s.from() + at, opposed ? s.to() - at : s.to())));
        return left;
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
