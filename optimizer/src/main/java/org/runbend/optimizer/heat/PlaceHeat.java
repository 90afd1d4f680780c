package org.runbend.optimizer.heat;

/**
 * What one place of the lattice gives to the room, W; of two figures the difference is what counts.
 *
 * @param straight pipe runs straight through it, in plates as far as they cover
 * @param bare pipe runs straight through it without a plate
 * @param bend pipe turns in it
 * @param empty no pipe, but neighbours that are served
 * @param clearance what the straight pipe beside one bend gives less because no plate reaches so near
 */
public record PlaceHeat(double straight, double bare, double bend, double empty, double clearance) {}
