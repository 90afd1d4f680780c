package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;

/**
 * A heat-spreader plate with one or two grooves for the pipe. Sizes in mm.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param width across the groove, mm
 * @param grooves 1 or 2
 * @param centres distance of the two grooves, mm; 0 for a single groove
 * @param grooveDiameter pipe diameter that the groove takes, mm
 * @param thickness sheet thickness, mm
 * @param material short word, such as aluminium
 * @param weightPerMetre kg/m
 * @param kerf what the saw takes per cut, mm
 * @param step lengths are cut in steps of this, mm
 * @param stock lengths on offer, shortest first
 * @param trim what is cut off the end of a stock plate before pieces are, mm
 */
public record SpreaderPlate(
        String sku,
        String name,
        double width,
        int grooves,
        double centres,
        double grooveDiameter,
        double thickness,
        String material,
        double weightPerMetre,
        double kerf,
        double step,
        List<PlateStock> stock,
        double trim) {
    /** A groove takes pipe of its diameter; makers state both rounded, so half a millimetre is forgiven (common practice). */
    private static final double GROOVE_TOLERANCE = 0.5;
    /** Twin grooves that are this much off the spacing can still be pressed on, mm. */
    private static final double CENTRES_TOLERANCE = 2;

    /** A plate whose stock is square at both ends. */
    public SpreaderPlate(
            String sku,
            String name,
            double width,
            int grooves,
            double centres,
            double grooveDiameter,
            double thickness,
            String material,
            double weightPerMetre,
            double kerf,
            double step,
            List<PlateStock> stock) {
        this(
                sku,
                name,
                width,
                grooves,
                centres,
                grooveDiameter,
                thickness,
                material,
                weightPerMetre,
                kerf,
                step,
                stock,
                0);
    }

    /** Checks sizes against each other and sorts the stock lengths. */
    public SpreaderPlate {
        Require.that(grooves == 1 || grooves == 2, "plate %s: grooves must be 1 or 2, not %s", sku, grooves);
        Require.that(
                width > grooveDiameter,
                "plate %s: width %s mm must exceed the groove %s mm",
                sku,
                width,
                grooveDiameter);
        Require.that(
                grooves == 1 ? centres == 0 : centres > grooveDiameter && centres < width,
                "plate %s: centres %s mm must lie between groove diameter and width for two grooves, and be 0 for one",
                sku,
                centres);
        Require.that(
                thickness > 0 && thickness < 10,
                "plate %s: thickness %s mm must be over 0 and under 10 mm",
                sku,
                thickness);
        Require.that(kerf >= 0 && kerf < 20, "plate %s: kerf %s mm must be 0 to 20 mm", sku, kerf);
        Require.that(step >= 1 && step <= 100, "plate %s: step %s mm must be 1 to 100 mm", sku, step);
        Require.that(trim >= 0 && trim < 100, "plate %s: trim %s mm must be 0 to 100 mm", sku, trim);
        Require.that(weightPerMetre >= 0, "plate %s: weight must not be negative", sku);
        Require.that(!stock.isEmpty(), "plate %s: at least one stock length must be on offer", sku);
        stock = stock.stream()
                .sorted(Comparator.comparingDouble(PlateStock::length))
                .toList();
    }

    /**
     * What pieces from an offcut are charged at by their share of the shortest stock plate on offer that is at least as long (the longest, if
     * none is), rounded to the nearest minor unit.
     *
     * @param length of all pieces, mm
     */
    public long priceOfCut(double length) {
        PlateStock like =
                stock.stream().filter(s -> s.length() >= length).findFirst().orElse(stock.get(stock.size() - 1));
        return Math.round(like.price() * length / like.length());
    }

    /** Whether its groove takes a pipe. */
    public boolean takes(Pipe pipe) {
        return Math.abs(grooveDiameter - pipe.outer()) <= GROOVE_TOLERANCE;
    }

    /** Whether its grooves lie as far apart as runs do; a single groove does at any spacing, mm. */
    public boolean hasCentres(double spacing) {
        return grooves == 1 || Math.abs(centres - spacing) <= CENTRES_TOLERANCE;
    }

    /** The room for it beside its neighbours, mm: plates of neighbouring runs lie side by side, a twin one takes the room of two. */
    public double room(double spacing) {
        return grooves * spacing;
    }

    /** Whether it can lie on runs that are so far apart, mm. */
    public boolean fits(double spacing) {
        return hasCentres(spacing) && width <= room(spacing);
    }
}
