package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.SawCost;
import org.runbend.optimizer.cutting.cover.CoverCutting;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.work.Work;

/** One floor's plates on their way: stretches, strips and target are found once, and packed in one way or several. */
final class FloorPlates {
    private static final double HUNDREDTHS = 100;
    private static final int ANY = Integer.MAX_VALUE;
    /** A place that was read from a file is as good as this, mm. */
    private static final double NOISE = 0.02;

    private static final Comparator<StripCover.Laid> TIDY = Comparator.comparingInt(
                    (StripCover.Laid p) -> p.lengths().size())
            .thenComparingInt(p -> p.pieces().size())
            .thenComparing(Comparator.comparingDouble(StripCover.Laid::least).reversed())
            .thenComparing(Comparator.comparingLong(StripCover.Laid::covered).reversed());

    private static final Comparator<StripCover.Laid> BY_OBJECTIVE =
            Comparator.comparingLong((StripCover.Laid p) -> p.cost() + p.work()).thenComparing(TIDY);

    private static final Comparator<StripCover.Laid> BY_COST = Comparator.comparingLong(StripCover.Laid::cost)
            .thenComparingLong(StripCover.Laid::work)
            .thenComparing(TIDY);

    /** Shares of the reach of twin plates that are tried, tenths of a percent. */
    private static final List<Integer> SHARES = List.of(1000, 950, 850, 700);

    private final PlateProblem problem;
    private final List<SpreaderPlate> singles;
    private final List<SpreaderPlate> twins;
    private final double kerf;
    private final SawCost sawCost;
    private final List<PlateStretch> stretches;
    private final long target;
    private final StripCover alone;
    private final int most;
    private final Work work;
    private final Map<String, TwinFinder.Division> divisions = new TreeMap<>();
    private Optional<FewLengthsCurve> curve = Optional.empty();
    private Optional<List<StripCover.Laid>> plans = Optional.empty();

    /** All that the cover in few lengths depends on. */
    private record Question(CoverProblem cover, int most) {}

    /** The same stretches, at another coverage. */
    private FloorPlates(FloorPlates other, PlateProblem problem) {
        this.problem = problem;
        most = other.most;
        work = other.work;
        singles = other.singles;
        twins = other.twins;
        kerf = other.kerf;
        sawCost = other.sawCost;
        stretches = other.stretches;
        target = target(problem, stretches, singles);
        alone = new StripCover(problem, stretches.stream().map(Strip::single).toList(), singles, kerf, target);
    }

    /**
     * The plates of a floor.
     *
     * @param most greatest number of different lengths that will be asked for
     * @throws Unbuildable if no single-groove product is named
     */
    FloorPlates(PlateProblem problem, int most) {
        this(problem, most, Work.silent());
    }

    /** The same under some work, which knows the covers that it has found. */
    FloorPlates(PlateProblem problem, int most, Work work) {
        this.problem = problem;
        this.most = most;
        this.work = work;
        singles = singles(problem.request().products());
        twins = twins(problem.request().products(), singles);
        kerf = problem.request().products().stream()
                .filter(p -> singles.contains(p) || twins.contains(p))
                .mapToDouble(SpreaderPlate::kerf)
                .max()
                .orElseThrow();
        sawCost = problem.sawCost();
        stretches = new StretchFinder(
                        problem.floor(), problem.request(), singles.get(0).width(), problem.slots())
                .find(problem.loops());
        target = target(problem, stretches, singles);
        List<Strip> strips = stretches.stream().map(Strip::single).toList();
        alone = new StripCover(problem, strips, singles, kerf, target);
    }

    /** The plates of the same stretches for another share of them. */
    FloorPlates at(double coverage) {
        Job.PlateRequest request = problem.request().with(problem.request().products(), coverage);
        return new FloorPlates(this, problem.with(request));
    }

    /**
     * The plates that the request asks for, or empty where they cannot be had in so few lengths: those of least material and work of
     * all that were found.
     */
    Optional<PlatePlan> asked() {
        OptionalInt limit = problem.request().maxLengths();
        if (limit.isPresent()) {
            return few(limit.getAsInt(), BY_OBJECTIVE);
        }
        StripCover.Laid best = all().min(BY_OBJECTIVE).orElseThrow(() -> refused(free()));
        return Optional.of(plan(best, bound(free()), alone.runByRun()));
    }

    /** The plates of least material in lengths as they come. */
    PlatePlan cheapest() {
        StripCover.Laid best = all().min(BY_COST).orElseThrow(() -> refused(free()));
        return plan(best, bound(free()), alone.runByRun());
    }

    /** The plates of least material in few lengths, or empty where none were found. */
    Optional<PlatePlan> few(int lengths) {
        return few(lengths, BY_COST);
    }

    private Optional<PlatePlan> few(int lengths, Comparator<StripCover.Laid> order) {
        return all().filter(p -> p.lengths().size() <= lengths).min(order).map(best -> {
            return plan(best, bound(point(lengths).answer()), alone.runByRun(best.lengths()));
        });
    }

    private Answer<CoverSolution> free() {
        return curve().free();
    }

    private Stream<StripCover.Laid> all() {
        if (plans.isEmpty()) {
            List<StripCover.Laid> all =
                    new ArrayList<>(alone.laid(free(), List.of(), ANY).stream().toList());
            for (FewLengthsCurve.Point p : curve().points()) {
                alone.laid(p.answer(), List.of(), p.lengths()).ifPresent(all::add);
                alone.laid(p.answer(), List.of(), ANY).ifPresent(all::add);
            }
            for (SpreaderPlate twin : twins) {
                all.addAll(withTwin(twin, OptionalInt.empty()));
                all.addAll(withTwin(twin, OptionalInt.of(most)));
            }
            plans = Optional.of(List.copyOf(all));
        }
        return plans.get().stream();
    }

    private FewLengthsCurve curve() {
        if (curve.isEmpty()) {
            Question question = new Question(alone.problem(), most);
            Supplier<FewLengthsCurve> found =
                    () -> alone.few(List.of(), most, CoverCutting.Effort.FULL).orElseThrow();
            curve = Optional.of(work.once(
                    question, FewLengthsCurve.class, () -> work.recall(question, FewLengthsCurve.class, found)));
        }
        return curve.orElseThrow();
    }

    /** What single-groove plates alone come to in few lengths. */
    FewLengthsCurve.Point point(int lengths) {
        return curve().at(lengths);
    }

    /** What of the coverage asked so many lengths can reach as far as found, 1 for all of it. */
    double share(int lengths) {
        return target == 0 ? 1 : (double) point(lengths).reach() / target;
    }

    private PlateBound bound(Answer<CoverSolution> answer) {
        Bound cutting =
                answer instanceof Answer.Found<CoverSolution> s ? s.it().bound() : new Bound(0, Bound.Proof.MATERIAL);
        return PlateBound.of(cutting, alone.problem(), problem, singles);
    }

    private PlatePlan plan(StripCover.Laid laid, PlateBound bound, long runByRun) {
        List<PlatePiece> placed = inOrderOfFlow(new Placing(
                        problem.loops(), stretches, pairs(), problem.request().gap())
                .placed(laid.pieces()));
        return plan(laid, placed, bound, runByRun);
    }

    private PlatePlan plan(StripCover.Laid laid, List<PlatePiece> placed, PlateBound bound, long runByRun) {
        return new PlatePlan(
                placed,
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
                unused(laid),
                laid.work(),
                OptionalLong.of(Math.min(bound.value(), laid.cost())));
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
                singles.stream().mapToDouble(FloorPlates::costByGroove).min().orElseThrow();
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
                * problem.request().coverage();
        return Math.max(0, (long) Math.floor(asked * HUNDREDTHS));
    }

    private List<Strip> pairs() {
        return twins.stream().flatMap(t -> division(t).twins().stream()).toList();
    }

    private TwinFinder.Division division(SpreaderPlate twin) {
        return divisions.computeIfAbsent(twin.sku(), sku -> new TwinFinder(problem, twin).divide(stretches));
    }

    private List<StripCover.Laid> withTwin(SpreaderPlate twin, OptionalInt lengths) {
        TwinFinder.Division division = division(twin);
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
            double from = used > 0 ? used + problem.request().gap() : 0;
            strip.after(from).stream()
                    .filter(s -> s.length() >= Math.max(1, problem.request().minPiece()))
                    .map(Strip::single)
                    .forEach(rest::add);
        }
        return rest;
    }

    /** The plan of a cover; where lengths are few, those for each number of lengths. */
    private List<StripCover.Laid> laid(StripCover cover, List<Double> given, OptionalInt lengths) {
        if (lengths.isEmpty()) {
            return cover.laid(cover.solve(CoverCutting.Effort.FULL), given, ANY).stream()
                    .toList();
        }
        return cover.few(given, lengths.getAsInt(), CoverCutting.Effort.LITTLE).stream()
                .flatMap(c -> c.points().stream())
                .flatMap(p -> cover.laid(p.answer(), given, lengths.getAsInt()).stream())
                .toList();
    }

    /** Where a stretch was divided, its parts together must still cover what is asked of each run. */
    private boolean coversEachRun(StripCover.Laid laid) {
        double share = problem.request().leastPerRun();
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
                    covered += on
                            ? piece.length() + (covered > 0 ? problem.request().gap() : 0)
                            : 0;
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
                    return StripCover.Laid.of(
                            pieces, cuts, 2 * pairs.covered() + o.covered(), pairs.cost() + o.cost(), kerf, sawCost);
                })
                .filter(this::coversEachRun)
                .toList();
    }

    /**
     * The plates where pieces of an earlier plan stay: each that still lies on a stretch is kept, and what they leave of the
     * coverage asked is cut from the rest of the shelf and from new plates. Empty where they cannot be kept together with
     * what else is asked.
     */
    Optional<PlatePlan> keeping(List<KeptPiece> before) {
        List<KeptPiece> kept = before.stream().filter(this::fits).toList();
        List<PlatePiece> pieces =
                new ArrayList<>(kept.stream().map(KeptPiece::piece).toList());
        List<PlateCut> cuts = new ArrayList<>();
        for (KeptPiece k : kept) {
            cuts.add(new PlateCut(
                    k.piece().product(),
                    k.stock().length(),
                    List.of(k.piece().length()),
                    0,
                    Optional.of(k.stock().id())));
        }
        long covered = covered(pieces);
        long cost = 0;
        List<Strip> free = free(pieces);
        if (covered < target) {
            if (free.isEmpty()) {
                return Optional.empty();
            }
            Set<String> used = kept.stream().map(k -> k.stock().id()).collect(Collectors.toSet());
            Shelf rest = new Shelf(problem.shelf().remnants().stream()
                    .filter(r -> !used.contains(r.id()))
                    .toList());
            StripCover others = new StripCover(problem.with(rest), free, singles, kerf, target - covered);
            Optional<StripCover.Laid> more = others.laid(others.solve(CoverCutting.Effort.FULL), List.of(), ANY);
            if (more.isEmpty()) {
                return Optional.empty();
            }
            pieces.addAll(more.get().pieces());
            cuts.addAll(more.get().cuts());
            covered += more.get().covered();
            cost = more.get().cost();
        }
        StripCover.Laid laid = StripCover.Laid.of(pieces, cuts, covered, cost, kerf, sawCost);
        OptionalInt most = problem.request().maxLengths();
        return coversEachRun(laid) && laid.lengths().size() <= most.orElse(ANY)
                ? Optional.of(plan(
                        laid, inOrderOfFlow(pieces), new PlateBound(0, "what stays costs nothing"), alone.runByRun()))
                : Optional.empty();
    }

    private boolean fits(KeptPiece kept) {
        PlatePiece piece = kept.piece();
        boolean named = Stream.concat(singles.stream(), twins.stream())
                .anyMatch(p -> p.sku().equals(piece.product())
                        && p.grooves() == piece.places().size());
        return named
                && piece.places().stream().allMatch(p -> stretches.stream().anyMatch(s -> holds(s, p, piece.length())));
    }

    private static boolean holds(PlateStretch s, PlatePiece.Place p, double length) {
        return s.loop() == p.loop()
                && s.element() == p.element()
                && p.from() >= s.from() - NOISE
                && p.from() + length <= s.to() + NOISE;
    }

    /** Length of pipe under pieces and the gaps between them, hundredths of mm. */
    private long covered(List<PlatePiece> pieces) {
        double sum = 0;
        for (PlateStretch s : stretches) {
            double last = Double.NEGATIVE_INFINITY;
            for (double[] part : parts(pieces, s)) {
                double gap = part[0] - last;
                sum += part[1] - part[0] + (gap <= problem.request().gap() + NOISE ? gap : 0);
                last = part[1];
            }
        }
        return (long) Math.floor(sum * HUNDREDTHS);
    }

    /** Where pieces lie on a stretch, in order. */
    private static List<double[]> parts(List<PlatePiece> pieces, PlateStretch s) {
        return pieces.stream()
                .flatMap(piece -> piece.places().stream()
                        .filter(p -> holds(s, p, piece.length()))
                        .map(p -> new double[] {p.from(), p.from() + piece.length()}))
                .sorted(Comparator.comparingDouble(part -> part[0]))
                .toList();
    }

    /** What pieces leave free of the stretches, a gap beside each. */
    private List<Strip> free(List<PlatePiece> pieces) {
        List<Strip> free = new ArrayList<>();
        double least = Math.max(1, problem.request().minPiece());
        for (PlateStretch s : stretches) {
            double from = s.from();
            for (double[] part : parts(pieces, s)) {
                add(
                        free,
                        new PlateStretch(
                                s.loop(),
                                s.element(),
                                from,
                                part[0] - problem.request().gap()),
                        least);
                from = part[1] + problem.request().gap();
            }
            add(free, new PlateStretch(s.loop(), s.element(), from, s.to()), least);
        }
        return free;
    }

    private static void add(List<Strip> strips, PlateStretch stretch, double least) {
        if (stretch.length() >= least) {
            strips.add(Strip.single(stretch));
        }
    }

    private static Unbuildable refused(Answer<CoverSolution> answer) {
        return new Unbuildable("plates.coverage", "the plates cannot cover what is asked: " + answer.reason());
    }

    /** Products that the job names and the plan does not use. */
    private List<UnusedPlate> unused(StripCover.Laid laid) {
        return problem.request().products().stream()
                .filter(p -> !singles.contains(p))
                .filter(p -> !uses(laid, p))
                .map(p -> unused(p, laid))
                .toList();
    }

    private static boolean uses(StripCover.Laid laid, SpreaderPlate plate) {
        return laid.cuts().stream().anyMatch(c -> c.product().equals(plate.sku()));
    }

    private UnusedPlate unused(SpreaderPlate plate, StripCover.Laid laid) {
        if (plate.grooves() == 1) {
            return new UnusedPlate(plate.sku(), UnusedPlate.Why.WIDER, 0);
        }
        if (!twins.contains(plate)) {
            return new UnusedPlate(plate.sku(), UnusedPlate.Why.NO_USE, 0);
        }
        OptionalLong best = all().filter(p -> uses(p, plate))
                .mapToLong(p -> p.cost() + p.work())
                .min();
        if (best.isEmpty()) {
            return new UnusedPlate(plate.sku(), UnusedPlate.Why.NONE_FOUND, 0);
        }
        long more = best.getAsLong() - laid.cost() - laid.work();
        return more <= 0
                ? new UnusedPlate(plate.sku(), UnusedPlate.Why.NO_BETTER, 0)
                : new UnusedPlate(
                        plate.sku(), UnusedPlate.Why.DEARER, (double) more / Math.max(1, laid.cost() + laid.work()));
    }
}
