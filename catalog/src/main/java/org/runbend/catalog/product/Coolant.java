package org.runbend.catalog.product;

import java.util.Optional;

/**
 * A heat carrier.
 *
 * @param sku name by which a job calls it, such as propylene-glycol-40
 * @param name what a person calls it
 * @param base what it is made from
 * @param share volume share of the base in water, 0 to 1
 * @param freezes temperature at which first crystals form, degrees C
 * @param litre what a litre of it, ready to fill in, costs and weighs, if the workshop sells it
 */
public record Coolant(String sku, String name, Base base, double share, double freezes, Optional<Litre> litre) {
    /**
     * A litre as it is sold.
     *
     * @param cost what the workshop pays, minor units
     * @param price what the customer pays, minor units
     * @param weight kg
     */
    public record Litre(long cost, long price, double weight) {
        /** Checks that nothing is negative. */
        public Litre {
            Require.that(
                    cost >= 0 && price >= 0 && weight >= 0, "a litre: cost, price and weight must not be negative");
        }
    }

    /** A coolant that the workshop does not sell. */
    public Coolant(String sku, String name, Base base, double share, double freezes) {
        this(sku, name, base, share, freezes, Optional.empty());
    }

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
        Require.that(share >= 0 && share <= 1, "coolant %s: share %s must be 0 to 100 %%", sku, share);
        Require.that(
                freezes > -80 && freezes <= 0,
                "coolant %s: freezes %s degrees C must be over -80 and at most 0",
                sku,
                freezes);
    }
}
