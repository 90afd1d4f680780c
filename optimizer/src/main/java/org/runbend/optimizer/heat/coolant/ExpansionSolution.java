package org.runbend.optimizer.heat.coolant;

/**
 * How a filling grows.
 *
 * @param litres by how much, l
 * @param cold density at the coldest, kg/m3
 * @param hot density at the hottest, kg/m3
 * @param room what the header tank must hold over its cold mark, l; the vessel's least nominal volume in a closed circuit
 */
public record ExpansionSolution(double litres, double cold, double hot, double room) {}
