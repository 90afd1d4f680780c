package org.runbend.optimizer.planning;

import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.quantity.OddInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitHeat;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * Heat, or why there is none.
 *
 * @param heat if it was reckoned
 * @param remark what a person should know where the job asks for it and it was not; at most one of both is there
 */
record ReckonedHeat(Optional<KitHeat> heat, Optional<Remark> remark) {
    /** Reckons heat where the job has what it needs; whatever goes wrong costs a remark, never the kit. */
    static ReckonedHeat of(Job job, List<KitPlan.LoopPlan> loops, PlatePlan plates) {
        try {
            Optional<KitHeat> heat = HeatPart.problem(job, loops, plates).map(p -> heat(job, p));
            return new ReckonedHeat(heat, Optional.empty());
        } catch (OddInput e) {
            return without(e.getMessage());
        } catch (RuntimeException e) {
            return without("a fault of our own (" + e.getClass().getSimpleName() + ")");
        }
    }

    private static KitHeat heat(Job job, HeatProblem problem) {
        HeatSolution solution = new HeatReckoning().solve(problem);
        return new KitHeat(problem, solution, PlacePricing.value(job), PlacePricing.wallToWall(job, problem, solution));
    }

    private static ReckonedHeat without(String reason) {
        return new ReckonedHeat(Optional.empty(), Optional.of(new Remark.NoHeat(reason)));
    }
}
