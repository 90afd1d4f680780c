package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A pump, what all flow passes, and the loops side by side.
 *
 * @param pump its curve
 * @param common what all flow passes, such as pipe from the heater and back
 * @param loops the loops, with their tails and valves
 * @param coolant at the mean temperature
 */
public record PumpProblem(PumpCurve pump, LoopPath common, List<LoopPath> loops, CoolantProperties coolant) {
    /** Checks that there is a loop. */
    public PumpProblem {
        loops = List.copyOf(loops);
        Within.rule(!loops.isEmpty(), "a pump needs a loop or more to push through");
    }
}
