package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;

/** What plates cost at several coverages, all else as the job has it: cost against heat, in one call. */
public final class CoverageCurve {
    private static final List<Double> SHARES = List.of(0.70, 0.80, 0.85, 0.90, 0.95, 1.00);

    /**
     * Plates at one coverage.
     *
     * @param asked share of the plateable length, 0 to 1
     * @param plates a plan that covers at least as much; the plan of a higher share where that costs no more
     */
    public record Point(double asked, PlatePlan plates) {}

    /** Plans at 70, 80, 85, 90, 95 and 100 % of what can take plates, costs never falling; shares out of reach are left out. */
    public List<Point> of(PlateProblem problem) {
        List<Point> points = new ArrayList<>();
        for (double share : SHARES) {
            try {
                points.add(new Point(share, new PlatePacking().pack(with(problem, share))));
            } catch (Unbuildable e) {
                break;
            }
        }
        for (int p = points.size() - 2; p >= 0; p--) {
            PlatePlan own = points.get(p).plates();
            PlatePlan next = points.get(p + 1).plates();
            if (next.bought() <= own.bought()) {
                points.set(p, new Point(points.get(p).asked(), next.withBound(own.bound(), own.proof())));
            }
        }
        return points;
    }

    private static PlateProblem with(PlateProblem problem, double share) {
        Job.PlateWish wish = problem.wish().with(problem.wish().products(), share);
        return new PlateProblem(problem.floor(), wish, problem.shelf(), problem.loops());
    }
}
