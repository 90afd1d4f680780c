package org.runbend.optimizer.planning;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlateOptions;
import org.runbend.optimizer.plan.SawWork;
import org.runbend.optimizer.plates.CoverageCurve;
import org.runbend.optimizer.plates.LengthCurve;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.PlateProblem;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.PlatesVerifier;

/** What the plates of a plan would cost in fewer lengths and at other coverages, all else unchanged, for comparison. */
public final class PlateComparing {
    /**
     * The plan with what its plates would cost at other coverages, beside what it knows of lengths.
     *
     * @throws IllegalStateException if a verifier finds a fault in one of these plans
     */
    public KitPlan compare(KitPlan plan) {
        PlateProblem problem = problem(
                plan.job(),
                plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList());
        List<PlateOptions.ByLengths> lengths =
                plan.plateOptions().map(PlateOptions::lengths).orElse(List.of());
        return plan.with(new PlateOptions(lengths, coverages(problem, plan)));
    }

    /** The problem of plates of a job's loops. */
    static PlateProblem problem(Job job, List<Breakdown> loops) {
        return new PlateProblem(
                job.floor(), job.plates(), job.shelf(), loops, job.catalog().labour());
    }

    /** Plates in few lengths, each held against the job. */
    static PlateOptions lengths(PlateProblem problem, KitPlan plan, List<LengthCurve.Point> points) {
        Job job = plan.job();
        List<PlateOptions.ByLengths> options = points.stream()
                .map(p -> new PlateOptions.ByLengths(
                        p.limit(),
                        checked(problem, job.plates().withLengths(p.limit()), p.plates()),
                        SawWork.of(job.catalog().labour(), p.plates(), plan.coils())))
                .toList();
        return new PlateOptions(options, List.of());
    }

    private static List<PlateOptions.ByCoverage> coverages(PlateProblem problem, KitPlan plan) {
        Job.PlateRequest request = plan.job().plates();
        return new CoverageCurve()
                .of(problem, plan.plates()).stream()
                        .map(p -> new PlateOptions.ByCoverage(
                                p.asked(), checked(problem, request.with(request.products(), p.asked()), p.plates())))
                        .toList();
    }

    private static PlatePlan checked(PlateProblem problem, Job.PlateRequest request, PlatePlan plates) {
        List<Finding> broken = new PlatesVerifier(
                        request,
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
