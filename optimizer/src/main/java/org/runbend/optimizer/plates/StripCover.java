package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.FewLengthsProblem;
import org.runbend.optimizer.cutting.SawCost;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockUse;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.cutting.cover.CoverCutting;
import org.runbend.optimizer.cutting.cover.FewLengthsCutting;
import org.runbend.optimizer.cutting.cover.RunByRunCutting;
import org.runbend.optimizer.cutting.cover.SawTidying;
import org.runbend.optimizer.mip.Watch;

/** Covers strips with plates of some products of equal grooves: one problem of the cutting engine. */
final class StripCover {
    private static final double HUNDREDTHS = 100;

    private final List<Strip> strips;
    private final List<Stock> stock = new ArrayList<>();
    private final List<SpreaderPlate> sources = new ArrayList<>();
    private final double gap;
    private final double kerf;
    private final SawCost rates;
    private final CoverProblem problem;

    StripCover(PlateProblem problem, List<Strip> strips, List<SpreaderPlate> products, double kerf, long target) {
        this.strips = strips;
        gap = problem.request().gap();
        this.kerf = kerf;
        rates = problem.sawCost();
        for (SpreaderPlate plate : products) {
            for (Remnant r : problem.shelf().of(plate.sku())) {
                add(plate, Stock.single(plate.sku(), r.id(), (long) Math.floor(r.length() * HUNDREDTHS), 0));
            }
            for (PlateStock s : plate.stock()) {
                long trimmed = Math.round((s.length() - plate.trim()) * HUNDREDTHS);
                if (trimmed > 0) {
                    add(plate, Stock.bought(plate.sku(), trimmed, s.cost()));
                }
            }
        }
        double step = products.stream().mapToDouble(SpreaderPlate::step).max().orElseThrow();
        this.problem = new CoverProblem(
                strips.stream()
                        .map(s -> stretch(s.length(), problem.request().leastPerRun(), step))
                        .toList(),
                stock,
                Math.round(gap * HUNDREDTHS),
                Math.max(1, Math.round(problem.request().minPiece() * HUNDREDTHS)),
                maxPiece(problem.request().maxPiece()),
                Math.round(step * HUNDREDTHS),
                Math.round(kerf * HUNDREDTHS),
                Math.max(0, target));
    }

    private void add(SpreaderPlate plate, Stock one) {
        stock.add(one);
        sources.add(plate);
    }

    /** The last step of a stretch is not asked for, so that all that is asked can be had. */
    private static Stretch stretch(double length, double share, double step) {
        long whole = (long) Math.floor(length * HUNDREDTHS + 0.001);
        return new Stretch(
                whole, Math.min(whole, Math.max(0, (long) Math.floor((length - step) * share * HUNDREDTHS))));
    }

    private static long maxPiece(double mm) {
        return mm == Double.POSITIVE_INFINITY ? Long.MAX_VALUE : (long) Math.floor(mm * HUNDREDTHS + 0.001);
    }

    CoverProblem problem() {
        return problem;
    }

    /**
     * Plates laid and cut.
     *
     * @param pieces in their places
     * @param cuts stock plates
     * @param cost minor units
     * @param covered of the strips, hundredths of mm
     * @param work of the saw, minor units
     */
    record Laid(List<PlatePiece> pieces, List<PlateCut> cuts, long cost, long covered, long work) {
        static Laid of(
                List<PlatePiece> pieces, List<PlateCut> cuts, long covered, long cost, double kerf, SawCost rates) {
            long work = rates.of(PlatePlan.sawCuts(cuts, kerf), PlatePlan.stopSettings(cuts));
            return new Laid(pieces, cuts, cost, covered, work);
        }

        /** The shortest piece, mm; 0 where there is none. */
        double least() {
            return pieces.stream().mapToDouble(PlatePiece::length).min().orElse(0);
        }

        /** The different lengths of the pieces, mm. */
        List<Double> lengths() {
            return pieces.stream().map(PlatePiece::length).distinct().toList();
        }
    }

    /** The plates for the target, or why there are none. */
    Answer<CoverSolution> solve(CoverCutting.Effort effort) {
        return new CoverCutting(Watch.NONE, effort).solve(problem);
    }

    /**
     * Plates for the target by the number of different lengths, those given included.
     *
     * @param given lengths that other pieces have, mm; those that no piece here can have count all the same
     */
    Optional<FewLengthsCurve> few(List<Double> given, int most, CoverCutting.Effort effort) {
        List<Long> all = given.stream().map(l -> Math.round(l * HUNDREDTHS)).toList();
        List<Long> usable = all.stream().filter(this::isSize).distinct().toList();
        int left = most - Math.toIntExact(all.stream().distinct().count()) + usable.size();
        return left < 1
                ? Optional.empty()
                : Optional.of(
                        new FewLengthsCutting(Watch.NONE, effort).solve(new FewLengthsProblem(problem, usable, left)));
    }

    private boolean isSize(long length) {
        long longest = stock.stream().mapToLong(Stock::length).max().orElse(0);
        return length % problem.step() == 0
                && length >= problem.minPiece()
                && length <= Math.min(problem.maxPiece(), longest);
    }

    /** Cost of cutting each strip by itself in the lengths of a plan, minor units; 0 where that cannot be done. */
    long runByRun(List<Double> lengths) {
        List<Long> all = lengths.stream().map(l -> Math.round(l * HUNDREDTHS)).toList();
        if (all.isEmpty() || !all.stream().allMatch(this::isSize)) {
            return 0;
        }
        return new RunByRunCutting().solve(problem, all) instanceof Answer.Found<CoverSolution> s ? s.it().cost() : 0;
    }

    /** Cost of cutting each strip by itself in any lengths, minor units; 0 where that cannot be done. */
    long runByRun() {
        return new RunByRunCutting().solve(problem) instanceof Answer.Found<CoverSolution> s ? s.it().cost() : 0;
    }

    /**
     * The plates of an answer of {@link #solve}, if it is a plan, made as easy to saw as can be found at its cost.
     *
     * @param given lengths that other pieces have, mm
     * @param most greatest number of different lengths, those given included
     */
    Optional<Laid> laid(Answer<CoverSolution> answer, List<Double> given, int most) {
        if (!(answer instanceof Answer.Found<CoverSolution> found)) {
            return Optional.empty();
        }
        List<Long> inUse = given.stream().map(l -> Math.round(l * HUNDREDTHS)).toList();
        CoverSolution s = new SawTidying(problem, rates, inUse, most).tidied(found.it());
        return Optional.of(Laid.of(place(s), cuts(s), s.covered(), s.cost(), kerf, rates));
    }

    private List<PlatePiece> place(CoverSolution solution) {
        List<Long> lengths = new ArrayList<>();
        List<String> products = new ArrayList<>();
        for (StockUse use : solution.stock()) {
            for (long piece : use.pieces()) {
                lengths.add(piece);
                products.add(sources.get(use.stock()).sku());
            }
        }
        List<PlatePiece> placed = new ArrayList<>();
        for (int i = 0; i < strips.size(); i++) {
            double at = 0;
            for (long piece : solution.pieces().get(i)) {
                int taken = lengths.indexOf(piece);
                lengths.remove(taken);
                double length = piece / HUNDREDTHS;
                placed.add(new PlatePiece(
                        products.remove(taken), length, strips.get(i).places(at, length)));
                at += length + gap;
            }
        }
        return placed;
    }

    /** An offcut was squared when it was cut. */
    private double trim(int index) {
        return stock.get(index).id().isPresent() ? 0 : sources.get(index).trim();
    }

    private List<PlateCut> cuts(CoverSolution solution) {
        return solution.stock().stream()
                .map(use -> new PlateCut(
                        sources.get(use.stock()).sku(),
                        stock.get(use.stock()).length() / HUNDREDTHS + trim(use.stock()),
                        use.pieces().stream().map(p -> p / HUNDREDTHS).toList(),
                        use.leftover() / HUNDREDTHS,
                        stock.get(use.stock()).id()))
                .toList();
    }
}
