package org.runbend.optimizer.quote;

/**
 * A line of a quotation. As quantities are whole, price times quantity is exact and nothing is rounded.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param quantity whole number over 0
 * @param unit what one of it is
 * @param price of one, minor units, net
 */
public record QuoteLine(String sku, String name, long quantity, String unit, long price) {
    /** Net amount, minor units. */
    public long amount() {
        return Math.multiplyExact(price, quantity);
    }
}
