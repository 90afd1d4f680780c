package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A pipe as it is sold in coils. Sizes in mm. A value that exists is a valid one.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param outer outside diameter, mm
 * @param wall wall thickness, mm
 * @param material short word, such as pe-rt
 * @param fittedRadius least bend radius with the bending aid, centreline, mm
 * @param handRadius least bend radius by hand, centreline, mm, at least the fitted one
 * @param aid part number of the bending aid, if there is one
 * @param weightPerMetre kg/m, empty pipe
 * @param coils coil lengths on offer, shortest first
 * @param maxTemperature highest temperature of the water in it, degrees C, where its maker says it
 * @param supply what of a coil that is bought goes into the box
 * @param test how its maker wants a loop tested, where he says it
 */
public record Pipe(
        String sku,
        String name,
        double outer,
        double wall,
        String material,
        double fittedRadius,
        double handRadius,
        Optional<String> aid,
        double weightPerMetre,
        List<Coil> coils,
        OptionalDouble maxTemperature,
        Supply supply,
        Optional<PressureTest> test) {
    /** What of a coil that is bought goes into the box. */
    public enum Supply {
        /** All of it, at its price; the rest is the customer's. */
        WHOLE,
        /** The cuts alone, charged by their share of it; the rest stays on the workshop's shelf. */
        CUT
    }

    /** A pipe of which no highest temperature is known and whole coils are supplied. */
    public Pipe(
            String sku,
            String name,
            double outer,
            double wall,
            String material,
            double fittedRadius,
            double handRadius,
            Optional<String> aid,
            double weightPerMetre,
            List<Coil> coils) {
        this(
                sku,
                name,
                outer,
                wall,
                material,
                fittedRadius,
                handRadius,
                aid,
                weightPerMetre,
                coils,
                OptionalDouble.empty(),
                Supply.WHOLE,
                Optional.empty());
    }

    /** Checks sizes against each other and sorts the coils. */
    public Pipe {
        Require.that(outer > 0 && outer <= 63, "pipe %s: outer %s mm must be over 0 and at most 63 mm", sku, outer);
        Require.that(
                wall > 0 && wall < outer / 2, "pipe %s: wall %s mm must be over 0 and under half of outer", sku, wall);
        Require.that(
                fittedRadius > outer / 2,
                "pipe %s: least radius as fitted %s mm must be over half of outer %s mm",
                sku,
                fittedRadius,
                outer);
        Require.that(
                handRadius >= fittedRadius,
                "pipe %s: least radius by hand %s mm must not be under the fitted one %s mm",
                sku,
                handRadius,
                fittedRadius);
        Require.that(weightPerMetre >= 0, "pipe %s: weight must not be negative", sku);
        Require.that(!coils.isEmpty(), "pipe %s: at least one coil length must be on offer", sku);
        coils = coils.stream().sorted(Comparator.comparingDouble(Coil::length)).toList();
    }

    /** Inside diameter, mm. */
    public double bore() {
        return outer - 2 * wall;
    }

    /** The longest coil on offer, mm. */
    public double longestCoil() {
        return coils.get(coils.size() - 1).length();
    }

    /**
     * What a cut is charged at by its share of the shortest coil on offer that is at least as long (the longest, if none is), rounded to
     * the nearest minor unit.
     *
     * @param length mm
     */
    public long priceOfCut(double length) {
        Coil like = coils.stream().filter(c -> c.length() >= length).findFirst().orElse(coils.get(coils.size() - 1));
        return Math.round(like.price() * length / like.length());
    }
}
