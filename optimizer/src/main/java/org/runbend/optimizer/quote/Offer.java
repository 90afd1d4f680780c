package org.runbend.optimizer.quote;

import java.util.Optional;

/**
 * All that a customer is told of prices.
 *
 * @param quote the quotation of the kit made to measure
 * @param kits standard kits beside it, if the workshop has any that suit
 */
public record Offer(Quote quote, Optional<KitChoice> kits) {}
