package org.runbend.catalog.product;

/**
 * A guide bush: a collar under the base of a hand router that runs along the edges of a guide while the cutter turns inside
 * it. Sizes in mm.
 *
 * @param outer outside diameter of the collar
 * @param bore its clear inside diameter, where the cutter turns
 * @param collar how far it reaches below the base of the router
 */
public record GuideBush(double outer, double bore, double collar) {
    /** Air between cutter and bore all round, mm: common practice. */
    public static final double AIR = 0.5;

    /** Checks the sizes. */
    public GuideBush {
        Require.that(outer > 0 && outer <= 150, "guide bush: outer %s mm must be over 0 and at most 150 mm", outer);
        Require.that(
                bore > 0 && bore < outer, "guide bush %s mm: bore %s mm must be over 0 and under outer", outer, bore);
        Require.that(
                collar > 0 && collar <= 50,
                "guide bush %s mm: collar %s mm must be over 0 and at most 50 mm",
                outer,
                collar);
    }

    /** Whether a cutter of a diameter turns freely inside. */
    public boolean takes(double cutter) {
        return cutter + 2 * AIR <= bore + 1e-9;
    }
}
