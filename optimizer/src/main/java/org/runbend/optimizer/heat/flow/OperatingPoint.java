package org.runbend.optimizer.heat.flow;

import java.util.List;

/** Finds where the curve of a pump meets the curve of the pipes, by halving: the one falls, the other rises. */
public final class OperatingPoint {
    private static final int HALVINGS = 60;

    /** The point; flow 0 where the pump has no head. */
    public PumpSolution solve(PumpProblem problem) {
        ParallelLoops loops = new ParallelLoops(problem.loops(), problem.coolant());
        double last = problem.pump().greatest();
        boolean endOfCurve = problem.pump().head(last) >= taken(problem, loops, last);
        double flow = last;
        if (!endOfCurve) {
            double low = 0;
            double high = last;
            for (int i = 0; i < HALVINGS; i++) {
                double middle = (low + high) / 2;
                if (problem.pump().head(middle) > taken(problem, loops, middle)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            flow = (low + high) / 2;
        }
        List<LoopLosses> each = loops.sharing(flow);
        return new PumpSolution(
                flow,
                problem.pump().head(flow),
                new DarcyWeisbach().losses(problem.common(), problem.coolant(), flow),
                each,
                endOfCurve);
    }

    private static double taken(PumpProblem problem, ParallelLoops loops, double flow) {
        return new DarcyWeisbach().losses(problem.common(), problem.coolant(), flow).total()
                + loops.sharing(flow).get(0).total();
    }
}
