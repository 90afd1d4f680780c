package org.runbend.optimizer.heat.flow;

import java.util.List;

/**
 * Where pump and pipes meet.
 *
 * @param flow l/min in all
 * @param head of the pump there, kPa
 * @param common losses of what all flow passes
 * @param loops losses of each loop
 * @param endOfCurve whether the pump would push more than its curve shows; the flow is then the curve's last
 */
public record PumpSolution(double flow, double head, LoopLosses common, List<LoopLosses> loops, boolean endOfCurve) {
    /** Copies the list. */
    public PumpSolution {
        loops = List.copyOf(loops);
    }
}
