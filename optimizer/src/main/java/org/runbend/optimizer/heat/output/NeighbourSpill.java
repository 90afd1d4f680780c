package org.runbend.optimizer.heat.output;

/** What warm floor gives its bare neighbour: the cover is a long fin (textbook), q = sqrt(k U) tanh(m w) at the edge. */
public final class NeighbourSpill {
    /** The conductances, for a square metre of the bare floor. */
    public StripOutput solve(SpillProblem problem) {
        double up = problem.stack().up();
        double down = problem.stack().down(problem.pipe());
        double all = up + down;
        double cover = problem.stack().sideways();
        if (cover == 0 || problem.edge() == 0) {
            return StripOutput.cold(up, down);
        }
        double width = problem.width() / 1000;
        double reach = Math.sqrt(all / cover) * width;
        double mean = Math.tanh(reach) / reach;
        double plane = problem.edge() * mean;
        return new StripOutput(
                plane * up,
                plane * down,
                up * down / all * (1 - plane),
                Math.max(1, 1 / mean),
                Math.min(1, 1 / Math.cosh(Math.min(300, reach)) / mean),
                plane);
    }
}
