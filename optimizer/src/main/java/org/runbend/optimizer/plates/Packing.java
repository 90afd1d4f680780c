package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverAnswer;
import org.runbend.optimizer.cutting.CoverCutting;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.Impossible;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;

/** One floor's plates on their way: stretches, strips and target are found once, and packed in one way or several. */
final class Packing {
    private static final double HUNDREDTHS = 100;
    /** Shares of the reach of twin plates that are tried, tenths of a percent. */
    private static final List<Integer> SHARES = List.of(1000, 950, 850, 700);

    private final PlateProblem problem;
    private final List<SpreaderPlate> singles;
    private final List<SpreaderPlate> twins;
    private final double kerf;
    private final List<PlateStretch> stretches;
    private final long target;
    private final StripCover alone;
    private final int most;
    private final CoverCutting.Effort effort;
    private Optional<FewLengthsCurve> curve = Optional.empty();
    private Optional<List<StripCover.Laid>> twinPlans = Optional.empty();

    /** The same stretches, at another coverage. */
    private Packing(Packing other, PlateProblem problem) {
        this.problem = problem;
        most = other.most;
        effort = other.effort;
        singles = other.singles;
        twins = other.twins;
        kerf = other.kerf;
        stretches = other.stretches;
        target = target(problem, stretches, singles);
        alone = new StripCover(problem, stretches.stream().map(Strip::single).toList(), singles, kerf, target);
    }

    /**
     * A packing.
     *
     * @param most greatest number of different lengths that will be asked for
     * @param effort for twin-groove plates and what they leave to others
     * @throws Unbuildable if no single-groove product is named
     */
    Packing(PlateProblem problem, int most, CoverCutting.Effort effort) {
        this.effort = effort;
        this.problem = problem;
        this.most = most;
        singles = singles(problem.wish().products());
        twins = twins(problem.wish().products(), singles);
        kerf = problem.wish().products().stream()
                .filter(p -> singles.contains(p) || twins.contains(p))
                .mapToDouble(SpreaderPlate::kerf)
                .max()
                .orElseThrow();
        stretches = new StretchFinder(
                        problem.floor(), problem.wish(), singles.get(0).width(), problem.slots())
                .find(problem.loops());
        target = target(problem, stretches, singles);
        List<Strip> strips = stretches.stream().map(Strip::single).toList();
        alone = new StripCover(problem, strips, singles, kerf, target);
    }

    /** A packing of the same stretches for another share of them. */
    Packing at(double coverage) {
        Job.PlateWish wish = problem.wish().with(problem.wish().products(), coverage);
        return new Packing(this, new PlateProblem(problem.floor(), wish, problem.shelf(), problem.loops()));
    }

    /** The plates that the wish asks for, or empty where they cannot be had in so few lengths. */
    Optional<PlatePlan> asked() {
        OptionalInt limit = problem.wish().maxLengths();
        return limit.isEmpty() ? Optional.of(free()) : few(limit.getAsInt(), true);
    }

    /** The plates in lengths as they come. */
    PlatePlan free() {
        CoverAnswer answer = curve.map(FewLengthsCurve::free).orElseGet(() -> alone.solve(CoverCutting.Effort.FULL));
        List<StripCover.Laid> plans = new ArrayList<>();
        alone.laid(answer).ifPresent(plans::add);
        for (SpreaderPlate twin : twins) {
            plans.addAll(withTwin(twin, OptionalInt.empty()));
        }
        StripCover.Laid best = best(plans).orElseThrow(() -> refused(answer));
        return plan(best, bound(answer), alone.runByRun());
    }

    /** The plates in few lengths, or empty where none were found; {@code withTwins} says whether twin-groove ones are tried. */
    Optional<PlatePlan> few(int lengths, boolean withTwins) {
        FewLengthsCurve.Point point = point(lengths);
        List<StripCover.Laid> plans = new ArrayList<>();
        alone.laid(point.answer()).ifPresent(plans::add);
        if (withTwins) {
            fewWithTwins().stream().filter(p -> p.lengths().size() <= lengths).forEach(plans::add);
        }
        return best(plans).map(best -> {
            return plan(best, bound(point.answer()), alone.runByRun(best.lengths()));
        });
    }

    private List<StripCover.Laid> fewWithTwins() {
        if (twinPlans.isEmpty()) {
            twinPlans = Optional.of(twins.stream()
                    .flatMap(t -> withTwin(t, OptionalInt.of(most)).stream())
                    .toList());
        }
        return twinPlans.get();
    }

    /** What single-groove plates alone come to in few lengths. */
    FewLengthsCurve.Point point(int lengths) {
        if (curve.isEmpty()) {
            curve = alone.few(List.of(), most, CoverCutting.Effort.FULL);
        }
        return curve.orElseThrow().at(lengths);
    }

    /** What of the coverage asked so many lengths can reach as far as found, 1 for all of it. */
    double share(int lengths) {
        return target == 0 ? 1 : (double) point(lengths).reach() / target;
    }

    private static Optional<StripCover.Laid> best(List<StripCover.Laid> plans) {
        return plans.stream()
                .min(Comparator.comparingLong(StripCover.Laid::cost)
                        .thenComparingInt(p -> p.pieces().size()));
    }

    private PlateBound bound(CoverAnswer answer) {
        Bound cutting = answer instanceof CoverSolution s ? s.bound() : new Bound(0, Bound.Proof.MATERIAL);
        return PlateBound.of(cutting, alone.problem(), problem, singles);
    }

    private PlatePlan plan(StripCover.Laid laid, PlateBound bound, long runByRun) {
        return new PlatePlan(
                inOrderOfFlow(laid.pieces()),
                laid.cuts(),
                kerf,
                stretches.stream().mapToDouble(PlateStretch::length).sum(),
                laid.pieces().stream()
                        .mapToDouble(p -> p.length() * p.places().size())
                        .sum(),
                problem.loops().stream().mapToDouble(l -> l.straightLength()).sum(),
                laid.cost(),
                Math.min(bound.value(), laid.cost()),
                bound.proof(),
                Math.max(runByRun, laid.cost()),
                remarks(problem, singles, laid));
    }

    private static List<PlatePiece> inOrderOfFlow(List<PlatePiece> pieces) {
        return pieces.stream()
                .sorted(Comparator.comparingInt(
                                (PlatePiece p) -> p.places().get(0).loop())
                        .thenComparingInt(p -> p.places().get(0).element())
                        .thenComparingDouble(p -> p.places().get(0).from()))
                .toList();
    }

    private static List<SpreaderPlate> singles(List<SpreaderPlate> named) {
        List<SpreaderPlate> single = named.stream()
                .filter(p -> p.grooves() == 1)
                .sorted(Comparator.comparingDouble(SpreaderPlate::width))
                .toList();
        if (single.isEmpty()) {
            throw new Unbuildable(
                    "plates.product",
                    "only twin-groove plates are named; a run without a neighbour needs a single-groove plate, name one beside"
                            + " them");
        }
        return single.stream().filter(p -> p.width() == single.get(0).width()).toList();
    }

    /** Twin-groove products that cost less by the groove than any single one, and leave room for one on the next run. */
    private static List<SpreaderPlate> twins(List<SpreaderPlate> named, List<SpreaderPlate> singles) {
        double cheapest =
                singles.stream().mapToDouble(Packing::costByGroove).min().orElseThrow();
        double half = singles.get(0).width() / 2;
        return named.stream()
                .filter(p -> p.grooves() == 2 && costByGroove(p) < cheapest)
                .filter(p ->
                        (p.width() - p.centres()) / 2 + Math.max(half, (p.width() - p.centres()) / 2) <= p.centres())
                .toList();
    }

    private static double costByGroove(SpreaderPlate plate) {
        return plate.stock().stream()
                .mapToDouble(s -> s.cost() / s.length() / plate.grooves())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** The last step of a stretch is not asked for, so that all that is asked can be had; hundredths of mm. */
    private static long target(PlateProblem problem, List<PlateStretch> stretches, List<SpreaderPlate> singles) {
        double step = singles.stream().mapToDouble(SpreaderPlate::step).max().orElseThrow();
        double asked = stretches.stream().mapToDouble(s -> s.length() - step).sum()
                * problem.wish().coverage();
        return Math.max(0, (long) Math.floor(asked * HUNDREDTHS));
    }

    private List<StripCover.Laid> withTwin(SpreaderPlate twin, OptionalInt lengths) {
        TwinFinder.Division division = new TwinFinder(problem, twin).divide(stretches);
        double reach = division.twins().stream()
                .mapToDouble(s -> s.length() - twin.step())
                .sum();
        List<StripCover.Laid> plans = new ArrayList<>();
        long half = Math.min((target + 1) / 2, (long) (reach * HUNDREDTHS));
        for (int share : SHARES) {
            long covered = half * share / 1000;
            if (!division.twins().isEmpty() && covered > 0) {
                StripCover pairs = new StripCover(problem, division.twins(), List.of(twin), kerf, covered);
                for (StripCover.Laid p : laid(pairs, List.of(), lengths)) {
                    plans.addAll(completed(p, rest(division, p), lengths));
                }
            }
        }
        return plans;
    }

    /** What twin-groove pieces leave to single-groove ones: all that they cannot reach, and the ends of their strips. */
    private List<Strip> rest(TwinFinder.Division division, StripCover.Laid pairs) {
        List<Strip> rest = new ArrayList<>(division.singles());
        for (Strip strip : division.twins()) {
            double used = pairs.pieces().stream()
                    .filter(p -> strip.holds(p.places().get(0)))
                    .mapToDouble(p -> p.places().get(0).from()
                            + p.length()
                            - strip.first().from())
                    .max()
                    .orElse(0);
            double from = used > 0 ? used + problem.wish().gap() : 0;
            strip.after(from).stream()
                    .filter(s -> s.length() >= Math.max(1, problem.wish().minPiece()))
                    .map(Strip::single)
                    .forEach(rest::add);
        }
        return rest;
    }

    /** The plan of a cover; where lengths are few, those for each number of lengths. */
    private List<StripCover.Laid> laid(StripCover cover, List<Double> given, OptionalInt lengths) {
        if (lengths.isEmpty()) {
            return cover.laid(cover.solve(effort)).stream().toList();
        }
        return cover.few(given, lengths.getAsInt(), effort).stream()
                .flatMap(c -> c.points().stream())
                .flatMap(p -> cover.laid(p.answer()).stream())
                .toList();
    }

    /** Where a stretch was divided, its parts together must still cover what is asked of each run. */
    private boolean coversEachRun(StripCover.Laid laid) {
        double share = problem.wish().leastPerRun();
        double lastStep =
                singles.stream().mapToDouble(SpreaderPlate::step).max().orElseThrow();
        for (PlateStretch s : stretches) {
            double covered = 0;
            for (PlatePiece piece : laid.pieces()) {
                for (PlatePiece.Place place : piece.places()) {
                    boolean on = place.loop() == s.loop()
                            && place.element() == s.element()
                            && place.from() >= s.from() - 1e-6
                            && place.from() < s.to();
                    covered +=
                            on ? piece.length() + (covered > 0 ? problem.wish().gap() : 0) : 0;
                }
            }
            if (share > 0 && covered < share * (s.length() - lastStep)) {
                return false;
            }
        }
        return true;
    }

    private List<StripCover.Laid> completed(StripCover.Laid pairs, List<Strip> rest, OptionalInt lengths) {
        StripCover others = new StripCover(problem, rest, singles, kerf, target - 2 * pairs.covered());
        return laid(others, pairs.lengths(), lengths).stream()
                .map(o -> {
                    List<PlatePiece> pieces = new ArrayList<>(pairs.pieces());
                    pieces.addAll(o.pieces());
                    List<PlateCut> cuts = new ArrayList<>(pairs.cuts());
                    cuts.addAll(o.cuts());
                    return new StripCover.Laid(
                            pieces, cuts, pairs.cost() + o.cost(), 2 * pairs.covered() + o.covered());
                })
                .filter(this::coversEachRun)
                .toList();
    }

    private static Unbuildable refused(CoverAnswer answer) {
        return new Unbuildable(
                "plates.coverage", "the plates cannot cover what is asked: " + ((Impossible) answer).reason());
    }

    private static List<String> remarks(PlateProblem problem, List<SpreaderPlate> singles, StripCover.Laid laid) {
        return problem.wish().products().stream()
                .filter(p -> !singles.contains(p))
                .filter(p -> laid.cuts().stream().noneMatch(c -> c.product().equals(p.sku())))
                .map(p -> "Plate " + p.sku() + " is named in the job but not used: "
                        + (p.grooves() == 2
                                ? "on this floor single-groove plates cost no more."
                                : "a narrower one is named."))
                .toList();
    }
}
