package org.runbend.optimizer.heat.flow;

import java.util.ArrayList;
import java.util.List;

/** Throttles loops until each has the flow wanted: the one that takes most stays open, the others are brought up to it. */
public final class LoopBalance {
    private static final double NOTHING = 1e-9;

    /** The settings. */
    public BalanceSolution solve(BalanceProblem problem) {
        List<Double> losses = new ArrayList<>();
        for (int i = 0; i < problem.loops().size(); i++) {
            losses.add(new DarcyWeisbach()
                    .losses(
                            problem.loops().get(i),
                            problem.coolant(),
                            problem.flows().get(i))
                    .total());
        }
        double most = losses.stream().mapToDouble(l -> l).max().orElseThrow();
        List<BalanceSolution.Setting> settings = new ArrayList<>();
        for (int i = 0; i < losses.size(); i++) {
            double throttled = most - losses.get(i);
            double cubic = problem.flows().get(i) * 0.06;
            double kv = throttled < NOTHING
                    ? LoopPath.NO_VALVE
                    : cubic * Math.sqrt(problem.coolant().density() / 1000 * 100 / throttled);
            settings.add(new BalanceSolution.Setting(throttled < NOTHING ? 0 : throttled, kv));
        }
        return new BalanceSolution(most, settings);
    }
}
