package org.runbend.catalog.product;

/**
 * A heat carrier.
 *
 * @param sku name by which a job calls it, such as propylene-glycol-40
 * @param name what a person calls it
 * @param base what it is made from
 * @param share volume share of the base in water, 0 to 1
 * @param freezes temperature at which first crystals form, degrees C
 */
public record Coolant(String sku, String name, Base base, double share, double freezes) {
    /** Base fluids. */
    public enum Base {
        /** Plain water. */
        WATER,
        /** Ethylene glycol and water. */
        ETHYLENE_GLYCOL,
        /** Propylene glycol and water. */
        PROPYLENE_GLYCOL
    }

    /** Checks the share. */
    public Coolant {
        Check.that(share >= 0 && share <= 1, "coolant %s: share %s must be 0 to 100 %%", sku, share);
        Check.that(
                freezes > -80 && freezes <= 0,
                "coolant %s: freezes %s degrees C must be over -80 and at most 0",
                sku,
                freezes);
    }
}
