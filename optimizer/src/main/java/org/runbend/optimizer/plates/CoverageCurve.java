package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.job.Unbuildable;

/** What plates cost at several coverages, all else as the job has it: cost against heat, in one call. */
public final class CoverageCurve {
    private static final List<Double> SHARES = List.of(0.70, 0.80, 0.85, 0.90, 0.95, 1.00);

    /**
     * Plates at one coverage.
     *
     * @param asked share of the plateable length, 0 to 1
     * @param plates a plan that covers at least as much; the plan of a higher share where that costs less
     */
    public record Point(double asked, PlatePlan plates) {}

    /**
     * Plans at 70, 80, 85, 90, 95 and 100 % of what can take plates, costs never falling; shares out of reach are left out.
     *
     * @param own the plan that the request of the problem led to
     */
    public List<Point> of(PlateProblem problem, PlatePlan own) {
        List<Point> points = new ArrayList<>();
        FloorPlates floorPlates = new FloorPlates(
                problem,
                Math.max(LengthCurve.MOST, problem.request().maxLengths().orElse(1)));
        for (double share : SHARES) {
            try {
                Optional<PlatePlan> plan = share == problem.request().coverage()
                        ? Optional.of(own)
                        : floorPlates.at(share).asked();
                if (plan.isEmpty()) {
                    break;
                }
                points.add(new Point(share, plan.get()));
            } catch (Unbuildable e) {
                break;
            }
        }
        for (int p = points.size() - 2; p >= 0; p--) {
            PlatePlan less = points.get(p).plates();
            PlatePlan next = points.get(p + 1).plates();
            if (next.objective() < less.objective()) {
                points.set(p, new Point(points.get(p).asked(), next.withBound(less.bound(), less.proof())));
            }
        }
        return points;
    }
}
