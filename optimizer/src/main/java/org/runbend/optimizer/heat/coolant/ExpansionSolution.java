package org.runbend.optimizer.heat.coolant;

/**
 * How a filling grows.
 *
 * @param litres by how much, l
 * @param room what the header tank must hold over its cold mark, l; the vessel's least nominal volume in a closed circuit
 */
public record ExpansionSolution(double litres, double room) {}
