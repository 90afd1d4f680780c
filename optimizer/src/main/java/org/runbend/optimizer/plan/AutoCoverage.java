package org.runbend.optimizer.plan;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.job.Job;
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

    private final Job job;
    private final List<KitPlan.LoopPlan> loops;
    private final Map<Integer, Answer> known = new TreeMap<>();

    /**
     * Plates and their heat.
     *
     * @param coverage asked of the plates, 0 to 1
     * @param plates the plates
     * @param upward heat into the room, W
     * @param enough whether that is what was wanted; if not, these are all the plates that can be had
     */
    public record Answer(double coverage, PlatePlan plates, double upward, boolean enough) {}

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

    private Answer search(double wanted) {
        if (at(STEPS, wanted).upward() < wanted) {
            return at(STEPS, wanted);
        }
        int low = -1;
        int high = STEPS;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (at(middle, wanted).enough()) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Answer best = at(high, wanted);
        for (int i = high + 1; i <= Math.min(STEPS, high + LOOK_ON); i++) {
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
        Job asked = job.with(
                job.layout(), job.pipe(), job.plates().with(job.plates().products(), coverage));
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        PlatePlan plates = new PlatePacking().pack(PlateComparing.problem(asked, pipes));
        double upward = HeatPart.problem(asked, loops, plates)
                .map(p -> new HeatReckoning().solve(p).output().upward())
                .orElseThrow(
                        () -> new IllegalArgumentException("build and heating are needed to choose plates by heat"));
        return new Answer(coverage, plates, upward, upward >= wanted);
    }
}
