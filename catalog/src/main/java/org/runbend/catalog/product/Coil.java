package org.runbend.catalog.product;

/**
 * A coil of pipe as it is sold.
 *
 * @param length mm
 * @param cost what the workshop pays, minor units of the catalog's currency
 * @param price what the customer pays for the whole coil, minor units
 */
public record Coil(double length, long cost, long price) {
    /** Checks that the length can be told with a tape and that no amount is negative. */
    public Coil {
        Require.that(length >= 1 && length <= 1_000_000, "coil length %s mm: must be 1 to 1000000 mm", length);
        Require.that(cost >= 0 && price >= 0, "coil of %s mm: cost and price must not be negative", length);
    }
}
