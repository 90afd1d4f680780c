package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What plates cost by the number of different lengths they are cut to, all else as the job has it. */
public final class LengthCurve {
    static final int MOST = 6;

    /**
     * Plates in few lengths.
     *
     * @param limit how many different lengths are allowed; empty where any number is
     * @param plates the plan
     */
    public record Point(OptionalInt limit, PlatePlan plates) {}

    /**
     * Plans for 1 to 6 lengths, as far as that many can do, up to the first that costs no more than any number of them;
     * then the cheapest plan without a limit. A number that saves no material over a smaller one is left out, so costs fall.
     *
     * @throws org.runbend.optimizer.job.Unbuildable if there are no plates even without a limit
     */
    public List<Point> of(PlateProblem problem) {
        return of(new FloorPlates(problem, MOST));
    }

    static List<Point> of(FloorPlates floorPlates) {
        PlatePlan free = floorPlates.cheapest();
        List<Point> points = new ArrayList<>();
        long before = Long.MAX_VALUE;
        for (int n = 1; n <= MOST && before > free.bought(); n++) {
            Optional<PlatePlan> few = floorPlates.few(n);
            if (few.isPresent() && few.get().bought() < before) {
                before = few.get().bought();
                points.add(new Point(OptionalInt.of(n), few.get()));
            }
        }
        points.add(new Point(OptionalInt.empty(), free));
        return points;
    }
}
