package org.runbend.catalog.ledger;

/**
 * What is kept of a holding for an order.
 *
 * @param order the order
 * @param holding number of the holding
 * @param amount how many, or which length, hundredths of mm
 */
public record Reservation(String order, long holding, long amount) {}
