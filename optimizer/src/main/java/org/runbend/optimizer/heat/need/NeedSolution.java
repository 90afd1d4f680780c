package org.runbend.optimizer.heat.need;

/**
 * What is needed and what the floor covers.
 *
 * @param need of the room at the design temperature, W; 0 where it is as warm outside
 * @param share that the floor covers, 0 to 1; 1 where nothing is needed
 * @param remaining for air heating, W
 */
public record NeedSolution(double need, double share, double remaining) {}
