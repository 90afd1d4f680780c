package org.runbend.optimizer.heat;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A floor with its coolant and its room.
 *
 * @param build what the floor is made of
 * @param loops the loops, side by side
 * @param bare floor without pipe
 * @param supply what comes to the floor
 * @param surroundings what lies round it
 * @param circuit what else is in the circuit
 */
public record HeatProblem(
        FloorBuild build,
        List<HeatedLoop> loops,
        List<BareFloor> bare,
        Supply supply,
        Surroundings surroundings,
        CircuitParts circuit) {
    /** Checks that there is a loop. */
    public HeatProblem {
        loops = List.copyOf(loops);
        bare = List.copyOf(bare);
        Within.rule(!loops.isEmpty(), "no loop to heat with");
    }

    /** The same floor with coolant mixed to another temperature, degrees C. */
    HeatProblem mixedTo(double temperature) {
        Supply mixed = new Supply(supply.mixture(), temperature, supply.source(), supply.coldest(), supply.flow());
        return new HeatProblem(build, loops, bare, mixed, surroundings, circuit);
    }
}
