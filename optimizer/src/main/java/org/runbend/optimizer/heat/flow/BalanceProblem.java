package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Loops and the flow that each should have.
 *
 * @param loops with their valves open
 * @param flows l/min, one for each loop, over 0
 * @param coolant at the mean temperature
 */
public record BalanceProblem(List<LoopPath> loops, List<Double> flows, CoolantProperties coolant) {
    /** Checks that each loop has its flow. */
    public BalanceProblem {
        loops = List.copyOf(loops);
        flows = List.copyOf(flows);
        Within.rule(
                !loops.isEmpty() && loops.size() == flows.size(),
                "balance: %s loops need as many flows, not %s",
                loops.size(),
                flows.size());
        flows.forEach(f -> Within.range("wanted flow of a loop", f, 1e-6, 10_000, "l/min"));
    }
}
