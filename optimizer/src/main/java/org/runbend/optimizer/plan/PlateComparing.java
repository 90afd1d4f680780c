package org.runbend.optimizer.plan;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plates.CoverageCurve;
import org.runbend.optimizer.plates.LengthCurve;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.PlateProblem;
import org.runbend.optimizer.plates.PlatesVerifier;

/**
 * Packs the plates of a plan in fewer lengths and at other coverages, all else unchanged, for comparison; the two on two
 * threads, as neither knows of the other.
 */
public final class PlateComparing {
    /**
     * The plan with what else its plates could cost.
     *
     * @throws IllegalStateException if a verifier finds a fault in one of these plans
     */
    public KitPlan compare(KitPlan plan) {
        Job job = plan.job();
        List<Breakdown> loops =
                plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList();
        PlateProblem problem = new PlateProblem(job.floor(), job.plates(), job.shelf(), loops);
        CompletableFuture<List<PlateOptions.ByCoverage>> coverages =
                CompletableFuture.supplyAsync(() -> coverages(problem, plan));
        List<PlateOptions.ByLengths> lengths = lengths(problem, plan);
        return plan.with(new PlateOptions(lengths, coverages.join()));
    }

    private static List<PlateOptions.ByLengths> lengths(PlateProblem problem, KitPlan plan) {
        Job job = plan.job();
        return new LengthCurve()
                .of(problem, plan.plates()).stream()
                        .map(p -> new PlateOptions.ByLengths(
                                p.limit(),
                                checked(problem, job.plates().withLengths(p.limit()), p.plates()),
                                SawWork.of(job.catalog().labour(), p.plates(), plan.coils())))
                        .toList();
    }

    private static List<PlateOptions.ByCoverage> coverages(PlateProblem problem, KitPlan plan) {
        Job.PlateWish wish = plan.job().plates();
        return new CoverageCurve()
                .of(problem, plan.plates()).stream()
                        .map(p -> new PlateOptions.ByCoverage(
                                p.asked(), checked(problem, wish.with(wish.products(), p.asked()), p.plates())))
                        .toList();
    }

    private static PlatePlan checked(PlateProblem problem, Job.PlateWish wish, PlatePlan plates) {
        List<String> broken = new PlatesVerifier(
                        wish,
                        problem.floor().outline(),
                        problem.floor().plateless(),
                        problem.floor().unheated().stream()
                                .map(Job.Unheated::region)
                                .toList(),
                        problem.shelf())
                .verify(problem.loops(), plates);
        if (!broken.isEmpty()) {
            throw new IllegalStateException("plates of a comparison break a rule: " + broken);
        }
        return plates;
    }
}
