package org.runbend.optimizer.planning;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.need.HeatNeed;
import org.runbend.optimizer.heat.need.NeedProblem;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.quantity.OddInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlatePacking;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * The cheapest plates that give a wanted heat ({@code plates.coverage: auto}). Coverage goes in steps of 5 %; more plates give more heat,
 * so the least step that is enough is found by halving, and of the next steps the cheapest is taken, as stock may come out better
 * at a little more.
 */
public final class AutoCoverage {
    private static final int STEPS = 20;
    private static final int LOOK_ON = 2;
    /** Where heat cannot be reckoned. */
    private static final double USUAL = 0.85;

    private final Job job;
    private final List<KitPlan.LoopPlan> loops;
    private final Map<Integer, Answer> known = new TreeMap<>();

    /**
     * Plates and their heat.
     *
     * @param coverage asked of the plates, 0 to 1
     * @param plates the plates
     * @param upward heat into the room at the flow that keeps every limit, W
     * @param enough whether that is what was wanted; if not, these are all the plates that can be had
     */
    public record Answer(double coverage, PlatePlan plates, double upward, boolean enough) {}

    /**
     * A job whose coverage was chosen.
     *
     * @param job the job with that coverage
     * @param remark what a person should know of it
     */
    record Asked(Job job, Remark remark) {}

    private AutoCoverage(Job job, List<KitPlan.LoopPlan> loops) {
        this.job = job;
        this.loops = loops;
    }

    /**
     * The plates for a heat in W, for loops that are laid; the job must say what the floor is built of and what heats it.
     *
     * @throws IllegalArgumentException if it does not
     */
    public static Answer cheapest(Job job, List<KitPlan.LoopPlan> loops, double wanted) {
        return new AutoCoverage(job, loops).search(wanted);
    }

    /** The job with plates enough for the heat it wants; with the usual ones where that cannot be reckoned. */
    static Asked asked(Job job, List<KitPlan.LoopPlan> loops) {
        try {
            Job.Heating heating = job.heating().orElseThrow();
            double wanted = heating.request().wanted().orElseGet(() -> need(heating));
            Answer answer = cheapest(job, loops, wanted);
            return new Asked(
                    with(job, answer.coverage()),
                    new Remark.PlatedByHeat(wanted, answer.coverage(), answer.upward(), answer.enough()));
        } catch (OddInput e) {
            return new Asked(with(job, USUAL), new Remark.NotPlatedByHeat(e.getMessage(), USUAL));
        }
    }

    private static double need(Job.Heating heating) {
        SpaceLoss loss = heating.request().space().orElseThrow();
        return Math.max(
                0,
                new HeatNeed()
                        .solve(new NeedProblem(loss, heating.room(), heating.outside(), 0))
                        .need());
    }

    private static Job with(Job job, double coverage) {
        return job.with(job.layout(), job.pipe(), job.plates().with(job.plates().products(), coverage));
    }

    /** The most that plates can cover at all, in steps. */
    private int most(double wanted) {
        for (int step = STEPS; step > 0; step--) {
            if (canBeHad(step, wanted)) {
                return step;
            }
        }
        return 0;
    }

    /** Other wishes for the plates may forbid so many. */
    private boolean canBeHad(int step, double wanted) {
        try {
            return at(step, wanted).coverage() >= 0;
        } catch (Unbuildable e) {
            return false;
        }
    }

    private Answer search(double wanted) {
        int most = most(wanted);
        if (at(most, wanted).upward() < wanted) {
            return at(most, wanted);
        }
        int low = -1;
        int high = most;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (at(middle, wanted).enough()) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Answer best = at(high, wanted);
        for (int i = high + 1; i <= Math.min(most, high + LOOK_ON); i++) {
            Answer other = at(i, wanted);
            if (other.enough() && other.plates().bought() < best.plates().bought()) {
                best = other;
            }
        }
        return best;
    }

    private Answer at(int step, double wanted) {
        return known.computeIfAbsent(step, s -> reckoned((double) s / STEPS, wanted));
    }

    private Answer reckoned(double coverage, double wanted) {
        Job asked = with(job, coverage);
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        PlatePlan plates = new PlatePacking().pack(PlateComparing.problem(asked, pipes));
        double upward = HeatPart.problem(asked, loops, plates)
                .map(p -> new HeatReckoning().solve(p).usedUpward())
                .orElseThrow(
                        () -> new IllegalArgumentException("build and heating are needed to choose plates by heat"));
        return new Answer(coverage, plates, upward, upward >= wanted);
    }
}
