package org.runbend.optimizer.plates;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.work.Work;

/**
 * Decides which stretches get plates, in which pieces and from which stock plates, at least cost of material and saw work for
 * the coverage asked; among equals in fewer lengths, then fewer pieces, then with a longer least piece.
 *
 * <p>Lengths and cutting are one problem, see {@link org.runbend.optimizer.cutting.cover.CoverCutting}; where the job limits the
 * different lengths, see {@link org.runbend.optimizer.cutting.cover.FewLengthsCutting}. The single-groove products of the
 * narrowest width named are used. Where a twin-groove product costs less by the groove, plans with it over neighbouring
 * runs are made at several shares of what it can cover, single plates doing the rest, and the cheapest plan of all is
 * taken. The bound holds for all products named: for those that the cutting bound does not know, the material is a bound
 * too.
 */
public final class PlatePacking {
    /** Different lengths up to which it is asked whether more of them would do. */
    private static final int TRIED = 8;

    private final Work work;

    /** A packer that knows nothing yet. */
    public PlatePacking() {
        this(Work.silent());
    }

    /** A packer under some work, which knows the covers that it has found. */
    public PlatePacking(Work work) {
        this.work = work;
    }

    /**
     * The plates.
     *
     * @throws Unbuildable if no product named can be used, no stock is long enough for the least piece, or the wishes
     *     cannot be kept together
     */
    public PlatePlan pack(PlateProblem problem) {
        return packed(problem, LengthCurve.MOST).plan();
    }

    /** The plates as in {@link #pack}, and what they cost by the number of different lengths. */
    public Packed packAndCompare(PlateProblem problem) {
        return packed(problem, LengthCurve.MOST);
    }

    /**
     * Plates and what others would cost.
     *
     * @param plan the plates chosen
     * @param lengths others by the number of lengths; none costs less in material and work than the one chosen
     */
    public record Packed(PlatePlan plan, List<LengthCurve.Point> lengths) {
        /** Copies the list. */
        public Packed {
            lengths = List.copyOf(lengths);
        }
    }

    /**
     * The plates where pieces of an earlier plan stay wherever they still lie well; as in {@link #pack} where they cannot be
     * kept together with what else is asked.
     */
    public Packed packKeeping(PlateProblem problem, List<KeptPiece> before) {
        PlatePlan plan = new FloorPlates(problem, 1).keeping(before).orElseGet(() -> pack(problem));
        return new Packed(plan, List.of());
    }

    /**
     * The plates at a glance: their material as in {@link #pack} or hardly dearer, in lengths as they come, not made easy to saw and
     * compared with none.
     */
    public Packed packAtAGlance(PlateProblem problem) {
        return new Packed(packed(problem, 1).plan(), List.of());
    }

    private Packed packed(PlateProblem problem, int tried) {
        OptionalInt most = problem.request().maxLengths();
        FloorPlates floorPlates = new FloorPlates(problem, Math.max(tried, most.orElse(1)), work);
        PlatePlan plan = floorPlates.asked().orElseThrow(() -> collision(problem, floorPlates, most.getAsInt()));
        return new Packed(plan, LengthCurve.of(floorPlates));
    }

    private static Unbuildable collision(PlateProblem problem, FloorPlates floorPlates, int most) {
        PlatePlan free = floorPlates.cheapest();
        Job.PlateRequest request = problem.request();
        boolean byRun = request.leastPerRun() > 0
                && new FloorPlates(problem.with(request.withLeastPerRun(0)), most)
                        .few(most)
                        .isPresent();
        String wanted = byRun
                ? "plates.leastPerRun " + percent(request.leastPerRun())
                : "plates.coverage " + percent(request.coverage());
        double share = Math.min(1, floorPlates.share(most)) * request.coverage();
        String reach = byRun || share >= request.coverage()
                ? ""
                : ": pieces of " + lengths(most) + " cover at most " + percent(Math.floor(share * 1000) / 1000)
                        + (most <= 2 ? "" : " as far as found");
        return new Unbuildable(
                "plates.maxLengths",
                most + " and " + wanted + " cannot both be kept" + reach + "; maxLengths: "
                        + enough(problem, most, free) + " would do");
    }

    private static long enough(PlateProblem problem, int most, PlatePlan free) {
        FloorPlates more = new FloorPlates(problem, TRIED);
        for (int n = most + 1; n <= TRIED && n < free.lengths().size(); n++) {
            if (more.few(n).isPresent()) {
                return n;
            }
        }
        return free.lengths().size();
    }

    private static String lengths(int most) {
        return most == 1 ? "1 length" : most + " lengths";
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", share * 100).replace(".0 %", " %");
    }
}
