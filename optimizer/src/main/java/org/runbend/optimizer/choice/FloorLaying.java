package org.runbend.optimizer.choice;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/**
 * Lays the loops of many jobs for one floor: those that differ in plates alone are laid once, different ones side by side on
 * all cores, all on the lattice of the plan asked. What comes of each does not depend on how many cores there are.
 */
final class FloorLaying {
    /** Beyond so many places, about 16 m2, two loops at once would need too much memory. */
    private static final double MOST_SIDE_BY_SIDE = 700;

    private final KitPlan asked;
    private final Job known;
    private final Work work;

    /**
     * Laying beside a plan.
     *
     * @param known the job of that plan as it is laid, its direction settled
     */
    FloorLaying(KitPlan asked, Job known, Work work) {
        this.asked = asked;
        this.known = known;
        this.work = work;
    }

    /**
     * The loops of a job, or why there are none.
     *
     * @param floor the loops; empty if they cannot be had
     * @param reason why not
     */
    record Laid(Optional<LaidFloor> floor, String reason) {}

    /** What comes of each job, in their order. */
    List<Laid> lay(List<Job> jobs) {
        List<Job> layings = jobs.stream().map(this::laying).distinct().toList();
        AtomicInteger at = new AtomicInteger();
        Function<Job, Laid> lay = job -> {
            work.step("laying loops for alternatives", at.incrementAndGet(), layings.size());
            return laid(job);
        };
        Map<Job, Laid> byLaying = new HashMap<>();
        Job first = laying(known);
        byLaying.put(first, lay.apply(first));
        List<Job> others = layings.stream().filter(job -> !job.equals(first)).toList();
        List<Laid> laid = places() <= MOST_SIDE_BY_SIDE
                ? work.each(others, lay)
                : others.stream().map(lay).toList();
        for (int i = 0; i < laid.size(); i++) {
            byLaying.put(others.get(i), laid.get(i));
        }
        return jobs.stream().map(job -> byLaying.get(laying(job))).toList();
    }

    /** The job as far as laying asks: which plates cover how much is left as it was. */
    private Job laying(Job job) {
        return job.with(job.layout(), job.pipe(), known.plates());
    }

    private double places() {
        double pipe = asked.loops().stream()
                .mapToDouble(KitPlan.LoopPlan::floorLength)
                .sum();
        return pipe / asked.job().layout().spacing();
    }

    private Laid laid(Job job) {
        try {
            return new Laid(Optional.of(new KitPlanner(work.hushed()).layBeside(known, job)), "");
        } catch (Unbuildable reason) {
            return new Laid(Optional.empty(), reason.getMessage());
        }
    }
}
