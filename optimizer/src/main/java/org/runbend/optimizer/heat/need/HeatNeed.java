package org.runbend.optimizer.heat.need;

/** Holds a floor's heat against the need of its room: H (room - outside), after EN 12831 without heat-up and gains. */
public final class HeatNeed {
    /** Need, share and rest. */
    public NeedSolution solve(NeedProblem problem) {
        double need = Math.max(0, problem.loss().perKelvin() * (problem.room() - problem.outside()));
        double given = Math.max(0, problem.floor());
        double share = need == 0 ? 1 : Math.min(1, given / need);
        return new NeedSolution(need, share, Math.max(0, need - problem.floor()));
    }
}
