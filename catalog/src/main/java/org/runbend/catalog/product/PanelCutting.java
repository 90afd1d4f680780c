package org.runbend.catalog.product;

/**
 * How a workshop cuts parts from stock boards. Sizes in mm.
 *
 * @param kerf what the saw or the cutter takes between two parts
 * @param trim what is cut off each edge of a stock board
 * @param leastPart least length and width of a part, so that it can be held down
 */
public record PanelCutting(double kerf, double trim, double leastPart) {
    /** A saw of 4 mm, 10 mm off each edge, parts of 100 mm: common practice. */
    public static final PanelCutting USUAL = new PanelCutting(4, 10, 100);

    /** Checks ranges. */
    public PanelCutting {
        Require.that(kerf >= 0 && kerf <= 30, "panels: kerf %s mm must be 0 to 30 mm", kerf);
        Require.that(trim >= 0 && trim <= 100, "panels: trim %s mm must be 0 to 100 mm", trim);
        Require.that(leastPart >= 20 && leastPart <= 500, "panels: leastPart %s mm must be 20 to 500 mm", leastPart);
    }
}
