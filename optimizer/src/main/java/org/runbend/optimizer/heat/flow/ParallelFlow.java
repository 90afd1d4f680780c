package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;

/** Shares a flow among loops side by side so that each takes the same pressure. */
public final class ParallelFlow {
    /** Losses of each loop for a flow through all of them in l/min. */
    public List<LoopLosses> solve(List<LoopPath> loops, CoolantProperties coolant, double flow) {
        return new ParallelLoops(loops, coolant).sharing(flow);
    }
}
