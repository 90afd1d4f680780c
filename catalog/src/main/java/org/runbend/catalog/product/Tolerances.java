package org.runbend.catalog.product;

/**
 * How far what a floor is made of may be out, each to either side unless said. Sizes in mm.
 *
 * @param foam thickness of a sheet of foam
 * @param wood thickness of a sheet of wood
 * @param pipe outside diameter of a pipe, over its name's only
 * @param depth depth of a groove, by the cutter and its setting
 */
public record Tolerances(double foam, double wood, double pipe, double depth) {
    /**
     * Foam 1 mm (class T3 of EN 13164), sanded plywood of 21 mm 1 mm (EN 315), pipe of 16 mm 0.3 mm (EN ISO 15875-2), each from
     * memory; depth 0.3 mm, common practice.
     */
    public static final Tolerances USUAL = new Tolerances(1, 1, 0.3, 0.3);

    /** Checks ranges. */
    public Tolerances {
        for (double t : new double[] {foam, wood, pipe, depth}) {
            Require.that(t >= 0 && t <= 10, "panels: tolerances: %s mm must be 0 to 10 mm", t);
        }
    }

    /** Of the thickness of a board of a kind. */
    public double of(Board.Kind kind) {
        return kind == Board.Kind.INSULATION ? foam : wood;
    }
}
