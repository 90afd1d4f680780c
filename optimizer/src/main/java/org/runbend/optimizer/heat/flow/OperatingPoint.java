package org.runbend.optimizer.heat.flow;

import java.util.List;

/** Finds where the curve of a pump meets the curve of the pipes: the one falls, the other rises. */
public final class OperatingPoint {
    /** The point; flow 0 where the pump has no head. */
    public PumpSolution solve(PumpProblem problem) {
        ParallelLoops loops = new ParallelLoops(problem.loops(), problem.coolant());
        double last = problem.pump().greatest();
        List<LoopLosses> all = loops.sharing(last);
        boolean endOfCurve = problem.pump().head(last)
                >= common(problem, last).total() + all.get(0).total();
        List<LoopLosses> each =
                endOfCurve ? all : loops.at(pressure(problem, loops, all.get(0).total()));
        double flow = each.stream().mapToDouble(LoopLosses::flow).sum();
        return new PumpSolution(flow, problem.pump().head(flow), common(problem, flow), each, endOfCurve);
    }

    /** Pressure over the loops at which they take what the pump pushes, kPa. */
    private static double pressure(PumpProblem problem, ParallelLoops loops, double most) {
        return Rising.zero(
                pressure -> {
                    double flow = loops.flowAt(pressure);
                    return pressure
                            + common(problem, flow).total()
                            - problem.pump().head(flow);
                },
                0,
                most);
    }

    private static LoopLosses common(PumpProblem problem, double flow) {
        return new DarcyWeisbach().losses(problem.common(), problem.coolant(), flow);
    }
}
