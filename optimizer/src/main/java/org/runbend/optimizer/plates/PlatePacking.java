package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverAnswer;
import org.runbend.optimizer.cutting.CoverCutting;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Impossible;
import org.runbend.optimizer.cutting.RunByRunCutting;
import org.runbend.optimizer.job.Unbuildable;

/**
 * Decides which stretches get plates, in which pieces and from which stock plates, at least cost for the coverage asked.
 *
 * <p>Lengths and cutting are one problem, see {@link CoverCutting}. The single-groove products of the narrowest width
 * named are used. Where a twin-groove product costs less by the groove, plans with it over neighbouring runs are made at
 * several shares of what it can cover, single plates doing the rest, and the cheapest plan of all is taken. The bound
 * holds for all products named: for those that the cutting bound does not know, the material is a bound too.
 */
public final class PlatePacking {
    private static final double HUNDREDTHS = 100;
    /** mm of each stretch that are not asked for. */
    private static final double LAST_STEP = 10;

    /** Shares of the reach of twin plates that are tried, tenths of a percent. */
    private static final List<Integer> SHARES = List.of(1000, 950, 900, 850, 750);

    /**
     * The plates.
     *
     * @throws Unbuildable if no product named can be used or no stock is long enough for the least piece
     */
    public PlatePlan pack(PlateProblem problem) {
        List<SpreaderPlate> singles = singles(problem.wish().products());
        List<SpreaderPlate> twins = twins(problem.wish().products(), singles);
        double kerf = problem.wish().products().stream()
                .filter(p -> singles.contains(p) || twins.contains(p))
                .mapToDouble(SpreaderPlate::kerf)
                .max()
                .orElseThrow();
        List<PlateStretch> stretches = new StretchFinder(
                        problem.floor(), problem.wish(), singles.get(0).width())
                .find(problem.loops());
        long target = target(problem, stretches, singles);
        List<Strip> strips = stretches.stream().map(Strip::single).toList();
        StripCover alone = new StripCover(problem, strips, singles, kerf, target);
        CoverAnswer answer = alone.solve();
        List<StripCover.Laid> plans = new ArrayList<>();
        alone.laid(answer).ifPresent(plans::add);
        for (SpreaderPlate twin : twins) {
            plans.addAll(withTwin(problem, stretches, twin, singles, kerf, target));
        }
        StripCover.Laid best = plans.stream()
                .min(Comparator.comparingLong(StripCover.Laid::cost)
                        .thenComparingInt(p -> p.pieces().size()))
                .orElseThrow(() -> refused(answer));
        Bound cutting = answer instanceof CoverSolution s ? s.bound() : new Bound(0, Bound.Proof.MATERIAL);
        PlateBound bound = PlateBound.of(cutting, alone.problem(), problem, singles);
        return plan(problem, stretches, best, kerf, bound, runByRun(alone), remarks(problem, singles, best));
    }

    private static PlatePlan plan(
            PlateProblem problem,
            List<PlateStretch> stretches,
            StripCover.Laid laid,
            double kerf,
            PlateBound bound,
            long runByRun,
            List<String> remarks) {
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
                remarks);
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
                singles.stream().mapToDouble(PlatePacking::costByGroove).min().orElseThrow();
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

    private static List<StripCover.Laid> withTwin(
            PlateProblem problem,
            List<PlateStretch> stretches,
            SpreaderPlate twin,
            List<SpreaderPlate> singles,
            double kerf,
            long target) {
        TwinFinder.Division division =
                new TwinFinder(problem.floor(), problem.wish(), twin, problem.loops()).divide(stretches);
        double reach = division.twins().stream()
                .mapToDouble(s -> s.length() - twin.step())
                .sum();
        List<StripCover.Laid> plans = new ArrayList<>();
        for (int share : SHARES) {
            long most = Math.min((target + 1) / 2, (long) (reach * HUNDREDTHS));
            long covered = most * share / 1000;
            if (!division.twins().isEmpty() && covered > 0) {
                StripCover pairs = new StripCover(problem, division.twins(), List.of(twin), kerf, covered);
                pairs.laid(pairs.solve())
                        .flatMap(p -> completed(problem, p, division.singles(), singles, kerf, target))
                        .filter(p -> coversEachRun(problem, stretches, p))
                        .ifPresent(plans::add);
            }
        }
        return plans;
    }

    /** Where a stretch was divided, its parts together must still cover what is asked of each run. */
    private static boolean coversEachRun(PlateProblem problem, List<PlateStretch> stretches, StripCover.Laid laid) {
        double share = problem.wish().leastPerRun();
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
            if (share > 0 && covered < share * (s.length() - LAST_STEP)) {
                return false;
            }
        }
        return true;
    }

    private static Optional<StripCover.Laid> completed(
            PlateProblem problem,
            StripCover.Laid pairs,
            List<Strip> rest,
            List<SpreaderPlate> singles,
            double kerf,
            long target) {
        StripCover others = new StripCover(problem, rest, singles, kerf, target - 2 * pairs.covered());
        return others.laid(others.solve()).map(o -> {
            List<PlatePiece> pieces = new ArrayList<>(pairs.pieces());
            pieces.addAll(o.pieces());
            List<PlateCut> cuts = new ArrayList<>(pairs.cuts());
            cuts.addAll(o.cuts());
            return new StripCover.Laid(pieces, cuts, pairs.cost() + o.cost(), 2 * pairs.covered() + o.covered());
        });
    }

    private static long runByRun(StripCover alone) {
        return new RunByRunCutting().solve(alone.problem()) instanceof CoverSolution s ? s.cost() : 0;
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
