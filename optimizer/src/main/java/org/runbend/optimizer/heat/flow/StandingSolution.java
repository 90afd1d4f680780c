package org.runbend.optimizer.heat.flow;

/**
 * Pressures and boiling of a circuit at rest.
 *
 * @param fill gauge pressure at the lowest point when filled cold, kPa; with an open tank what its level gives
 * @param atHottest absolute pressure at the hottest point, kPa
 * @param boiling where the coolant boils there, degrees C
 * @param margin from the hottest temperature to boiling, K; negative where it boils
 */
public record StandingSolution(double fill, double atHottest, double boiling, double margin) {}
