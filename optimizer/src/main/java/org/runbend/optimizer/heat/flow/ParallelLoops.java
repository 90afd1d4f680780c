package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;

/** Loops between the same two points: they share the flow so that each takes the same pressure. */
final class ParallelLoops {
    /** More than any pipe of a floor carries, l/min. */
    private static final double MOST = 10_000;

    private final List<LoopPath> loops;
    private final CoolantProperties coolant;
    private final DarcyWeisbach method = new DarcyWeisbach();

    ParallelLoops(List<LoopPath> loops, CoolantProperties coolant) {
        this.loops = loops;
        this.coolant = coolant;
    }

    /** Each loop's losses at a pressure, kPa. */
    List<LoopLosses> at(double pressure) {
        return loops.stream()
                .map(path -> method.losses(path, coolant, flow(path, pressure)))
                .toList();
    }

    /** All flows at a pressure in kPa, l/min. */
    double flowAt(double pressure) {
        return loops.stream().mapToDouble(path -> flow(path, pressure)).sum();
    }

    /** Greatest pressure that a loop takes for a flow, kPa. */
    double mostFor(double flow) {
        return loops.stream()
                .mapToDouble(p -> method.losses(p, coolant, flow).total())
                .max()
                .orElseThrow();
    }

    /** Each loop's losses where all flows add up to a sum, l/min. */
    List<LoopLosses> sharing(double sum) {
        if (loops.size() == 1) {
            return List.of(method.losses(loops.get(0), coolant, sum));
        }
        return at(Rising.zero(pressure -> flowAt(pressure) - sum, 0, mostFor(sum)));
    }

    private double flow(LoopPath path, double pressure) {
        double high = 1;
        while (high < MOST && method.losses(path, coolant, high).total() < pressure) {
            high = Math.min(MOST, 4 * high);
        }
        return Rising.zero(flow -> method.losses(path, coolant, flow).total() - pressure, 0, high);
    }
}
