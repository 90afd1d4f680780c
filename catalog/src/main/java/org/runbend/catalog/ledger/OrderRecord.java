package org.runbend.catalog.ledger;

/**
 * An order, or a day's batch of orders that are cut together.
 *
 * @param order its number
 * @param state how far it is
 * @param fingerprint of the plan it was last quoted, reserved or cut by; empty if none
 */
public record OrderRecord(String order, OrderState state, String fingerprint) {
    /** An order that the ledger does not know. */
    static OrderRecord unknown(String order) {
        return new OrderRecord(order, OrderState.UNKNOWN, "");
    }
}
