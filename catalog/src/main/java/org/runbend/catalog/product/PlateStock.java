package org.runbend.catalog.product;

/**
 * A length in which a spreader plate is bought.
 *
 * @param length mm
 * @param cost what the workshop pays, minor units of the catalog's currency
 * @param price what the customer pays, minor units
 */
public record PlateStock(double length, long cost, long price) {
    /** No plate is longer, bought or left over, mm. */
    public static final double LONGEST = 20_000;

    /** Checks that the length can be told with a tape and that no amount is negative. */
    public PlateStock {
        Require.that(length >= 1 && length <= LONGEST, "plate length %s mm: must be 1 to 20000 mm", length);
        Require.that(cost >= 0 && price >= 0, "plate of %s mm: cost and price must not be negative", length);
    }
}
