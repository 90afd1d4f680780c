package org.runbend.catalog.product;

import java.util.List;

/**
 * How a workshop cuts parts from stock boards. Sizes in mm.
 *
 * @param kerf what the saw or the cutter takes between two parts
 * @param trim what is cut off each edge of a stock board
 * @param leastPart least length and width of a part, so that it can be held down
 * @param tolerances how far boards, pipe and grooves may be out
 * @param screws lengths of the screws at hand for covers, shortest first
 */
public record PanelCutting(double kerf, double trim, double leastPart, Tolerances tolerances, List<Double> screws) {
    /** A saw of 4 mm, 10 mm off each edge, parts of 100 mm: common practice; screws of common lengths. */
    public static final PanelCutting USUAL = new PanelCutting(
            4, 10, 100, Tolerances.USUAL, List.of(20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0, 80.0));

    /** Checks ranges. */
    public PanelCutting {
        Require.that(kerf >= 0 && kerf <= 30, "panels: kerf %s mm must be 0 to 30 mm", kerf);
        Require.that(trim >= 0 && trim <= 100, "panels: trim %s mm must be 0 to 100 mm", trim);
        Require.that(leastPart >= 20 && leastPart <= 500, "panels: leastPart %s mm must be 20 to 500 mm", leastPart);
        Require.that(!screws.isEmpty(), "panels: at least one screw must be at hand");
        for (double s : screws) {
            Require.that(s >= 5 && s <= 300, "panels: a screw of %s mm must be 5 to 300 mm long", s);
        }
        screws = screws.stream().sorted().toList();
    }
}
