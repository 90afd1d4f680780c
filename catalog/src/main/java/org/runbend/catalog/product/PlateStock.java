package org.runbend.catalog.product;

/**
 * A length in which a spreader plate is bought.
 *
 * @param length mm
 * @param cost what the workshop pays, minor units of the catalog's currency
 * @param price what the customer pays, minor units
 */
public record PlateStock(double length, long cost, long price) {
    /** Checks that the length is positive and that no amount is negative. */
    public PlateStock {
        Check.that(length > 0 && length <= 20_000, "plate length %s mm: must be over 0 and at most 20000 mm", length);
        Check.that(cost >= 0 && price >= 0, "plate of %s mm: cost and price must not be negative", length);
    }
}
