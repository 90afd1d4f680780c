package org.runbend.catalog.product;

import java.util.List;
import java.util.stream.Stream;

/**
 * Sides of a thing as it is packed, or of the inside of a carton, mm, in any order.
 *
 * @param length mm
 * @param width mm
 * @param height mm
 */
public record PackedSize(double length, double width, double height) {
    private static final double MOST = 20_000;

    /** Checks that it has sides. */
    public PackedSize {
        Require.that(
                length > 0 && width > 0 && height > 0 && length <= MOST && width <= MOST && height <= MOST,
                "size %s x %s x %s mm: each side must be over 0 and at most 20000",
                length,
                width,
                height);
    }

    /** mm3. */
    public double volume() {
        return length * width * height;
    }

    /** Sides, longest first, mm. */
    public List<Double> sides() {
        return Stream.of(length, width, height)
                .sorted((a, b) -> Double.compare(b, a))
                .toList();
    }

    /** Whether a thing of this size goes into an empty carton of another, turned as it likes, square to it. */
    public boolean fitsInto(PackedSize carton) {
        List<Double> mine = sides();
        List<Double> its = carton.sides();
        return mine.get(0) <= its.get(0) && mine.get(1) <= its.get(1) && mine.get(2) <= its.get(2);
    }
}
