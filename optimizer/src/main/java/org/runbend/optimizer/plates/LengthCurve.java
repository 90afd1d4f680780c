package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.cutting.CoverCutting;

/** What plates cost by the number of different lengths they are cut to, all else as the job has it. */
public final class LengthCurve {
    private static final int MOST = 6;

    /**
     * Plates in few lengths.
     *
     * @param limit how many different lengths are allowed; empty where any number is
     * @param plates the plan
     */
    public record Point(OptionalInt limit, PlatePlan plates) {}

    /**
     * Plans for 1 to 6 lengths, as far as that many can do, up to the first that costs no more than any number of them;
     * then the plan without a limit. A number that saves nothing over a smaller one is left out, so costs fall.
     *
     * @param own the plan that the wish of the problem led to
     * @throws org.runbend.optimizer.job.Unbuildable if there are no plates even without a limit
     */
    public List<Point> of(PlateProblem problem, PlatePlan own) {
        Packing packing = new Packing(problem, MOST, CoverCutting.Effort.LITTLE);
        packing.point(1);
        PlatePlan free = problem.wish().maxLengths().isEmpty() ? own : packing.free();
        boolean twins = free.pieces().stream().anyMatch(p -> p.places().size() > 1);
        List<Point> points = new ArrayList<>();
        Optional<PlatePlan> best = Optional.empty();
        for (int n = 1; n <= MOST && best.map(b -> b.bought() > free.bought()).orElse(true); n++) {
            long before = best.map(PlatePlan::bought).orElse(Long.MAX_VALUE);
            best = cheaper(best, packing.few(n, twins));
            if (best.isPresent() && best.get().bought() < before) {
                points.add(new Point(OptionalInt.of(n), best.get()));
            }
        }
        boolean saves = best.map(b -> b.bought() < free.bought()).orElse(false);
        PlatePlan last = saves ? best.orElseThrow().withBound(free.bound(), free.proof()) : free;
        points.add(new Point(OptionalInt.empty(), last));
        return points;
    }

    private static Optional<PlatePlan> cheaper(Optional<PlatePlan> before, Optional<PlatePlan> now) {
        long cost = before.map(PlatePlan::bought).orElse(Long.MAX_VALUE);
        return now.filter(p -> p.bought() <= cost).isPresent() ? now : before;
    }
}
