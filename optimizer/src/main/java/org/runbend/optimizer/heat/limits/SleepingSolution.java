package org.runbend.optimizer.heat.limits;

/**
 * How hot it gets under a mattress, as a straight line over the supply.
 *
 * @param underMattress hottest place of the floor's top, degrees C
 * @param perKelvin what it rises by for each degree of the supply
 */
public record SleepingSolution(double underMattress, double perKelvin) {}
