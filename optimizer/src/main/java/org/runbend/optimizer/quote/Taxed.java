package org.runbend.optimizer.quote;

import org.runbend.catalog.product.Rate;

/**
 * An amount that is taxed.
 *
 * @param amount minor units, net
 * @param rate of the tax on it
 */
public record Taxed(long amount, Rate rate) {}
