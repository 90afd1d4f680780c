package org.runbend.optimizer.heat.need;

/**
 * Whether the metal under a floor stays dry if the room's air gets there.
 *
 * @param metal temperature of the metal, degrees C
 * @param dewPoint of the room's air, degrees C
 * @param wet whether water would form
 */
public record DampSolution(double metal, double dewPoint, boolean wet) {}
