package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;

/** Loops between the same two points: they share the flow so that each takes the same pressure. Halving of intervals. */
final class ParallelLoops {
    private static final int HALVINGS = 80;
    /** More than any pipe of a floor carries, l/min. */
    private static final double MOST = 10_000;

    private final List<LoopPath> loops;
    private final CoolantProperties coolant;
    private final DarcyWeisbach method = new DarcyWeisbach();

    ParallelLoops(List<LoopPath> loops, CoolantProperties coolant) {
        this.loops = loops;
        this.coolant = coolant;
    }

    /** Flow of each at a pressure, kPa. */
    List<LoopLosses> at(double pressure) {
        return loops.stream()
                .map(path -> method.losses(path, coolant, flow(path, pressure)))
                .toList();
    }

    /** Each loop's losses where all flows add up to a sum, l/min. */
    List<LoopLosses> sharing(double sum) {
        if (loops.size() == 1) {
            return List.of(method.losses(loops.get(0), coolant, sum));
        }
        double low = 0;
        double high = loops.stream()
                .mapToDouble(p -> method.losses(p, coolant, sum).total())
                .max()
                .orElseThrow();
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            double flow = at(middle).stream().mapToDouble(LoopLosses::flow).sum();
            if (flow < sum) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return at(high);
    }

    private double flow(LoopPath path, double pressure) {
        double low = 0;
        double high = 1;
        while (high < MOST && method.losses(path, coolant, high).total() < pressure) {
            high *= 2;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (method.losses(path, coolant, middle).total() < pressure) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
