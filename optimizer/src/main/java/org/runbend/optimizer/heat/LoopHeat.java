package org.runbend.optimizer.heat;

import java.util.List;
import org.runbend.optimizer.heat.flow.LoopLosses;
import org.runbend.optimizer.heat.output.FloorOutput;

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
 * @param zones kinds of floor beside its pipe
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
        double litres,
        List<FloorOutput.ZoneOutput> zones) {
    /** Copies the list. */
    public LoopHeat {
        zones = List.copyOf(zones);
    }
}
