package org.runbend.optimizer.heat;

import org.runbend.optimizer.heat.flow.LoopLosses;

/**
 * What one loop does.
 *
 * @param name of the loop
 * @param upward into the room, W
 * @param downward to the outside, W
 * @param supply into the loop, degrees C
 * @param back out of the loop, degrees C
 * @param mean of its coolant, degrees C
 * @param film coefficient of the coolant in the bore, W/(m2 K)
 * @param losses of its flow
 * @param litres in the loop, without tails
 */
public record LoopHeat(
        String name,
        double upward,
        double downward,
        double supply,
        double back,
        double mean,
        double film,
        LoopLosses losses,
        double litres) {}
