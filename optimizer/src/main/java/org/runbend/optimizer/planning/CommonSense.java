package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.Coolant;
import org.runbend.catalog.product.Pipe;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlanCheck.Verdict;

/**
 * What a fitter knows without reckoning: whether the coolant freezes, whether it is too hot for pipe and wood, whether a loop
 * is too long for its bore. Where heat was reckoned, its own findings stand for most of it.
 */
final class CommonSense {
    /** Highest operating temperature of pipe for floor heating, degrees C: class 4 of ISO 10508, from memory. */
    private static final double PIPE = 70;

    /** Highest flow under a wooden floor, degrees C: makers of wooden floors say 45 to 55 (common practice). */
    private static final double WOOD = 55;

    /** Longest loop by least bore, mm and m: 16 x 2 to 100 m, 12 x 2 to 60, 10 x 1.5 to 40 (common practice). */
    private static final double[][] LONGEST = {{14, 120}, {12, 100}, {10, 80}, {8, 60}, {0, 40}};

    private CommonSense() {}

    /**
     * The checks.
     *
     * @param reckoned whether heat was reckoned, which knows frost and wood better
     */
    static List<PlanCheck> of(Job job, List<KitPlan.LoopPlan> loops, boolean reckoned) {
        List<PlanCheck> checks = new ArrayList<>();
        checks.add(length(job.pipe().product(), loops));
        job.heating().ifPresent(h -> {
            boolean known = job.pipe().product().maxTemperature().isPresent();
            if (!reckoned || !known) {
                checks.add(pipe(job, h));
            }
            if (!reckoned) {
                job.catalog().findCoolant(h.coolant()).ifPresent(c -> checks.add(frost(c, h)));
                job.build().ifPresent(b -> checks.add(wood(h)));
            }
        });
        return checks;
    }

    private static PlanCheck pipe(Job job, Job.Heating heating) {
        double limit = job.pipe().product().maxTemperature().orElse(PIPE);
        return PlanCheck.atMost(
                "flow temperature, at most that of the pipe",
                heating.flow(),
                limit,
                "degrees C",
                Verdict.FAIL,
                job.pipe().product().maxTemperature().isPresent()
                        ? "catalog, maxTemperature"
                        : "ISO 10508 class 4, from memory");
    }

    private static PlanCheck wood(Job.Heating heating) {
        return PlanCheck.atMost(
                "flow temperature under wood, at most",
                heating.flow(),
                WOOD,
                "degrees C",
                Verdict.WARN,
                "common practice; mix it down or ask the maker of the floor");
    }

    /** Without a coldest temperature nobody knows whether the coolant ever gets as cold as it is outside. */
    private static PlanCheck frost(Coolant coolant, Job.Heating heating) {
        double coldest = heating.coldest().orElse(heating.outside());
        boolean given = heating.coldest().isPresent();
        Verdict bad = coolant.freezes() > coldest ? Verdict.FAIL : Verdict.OK;
        Verdict verdict = given ? bad : Verdict.WARN;
        return new PlanCheck(
                "freezing point of " + coolant.name() + ", at most",
                coolant.freezes(),
                Finding.Side.AT_MOST,
                coldest,
                "degrees C",
                verdict,
                given
                        ? "job, heating.coldest"
                        : "heating.outside; say in heating.coldest how cold the coolant may get");
    }

    private static PlanCheck length(Pipe pipe, List<KitPlan.LoopPlan> loops) {
        double longest =
                loops.stream().mapToDouble(KitPlan.LoopPlan::cutLength).max().orElse(0) / 1000;
        double most = 0;
        for (double[] row : LONGEST) {
            most = most == 0 && pipe.bore() >= row[0] - 1e-9 ? row[1] : most;
        }
        return PlanCheck.atMost(
                "longest loop for its bore, at most",
                longest,
                most,
                "m",
                Verdict.WARN,
                "common practice for " + org.runbend.catalog.source.Plain.number(pipe.bore())
                        + " mm of bore; more loops are shorter");
    }
}
