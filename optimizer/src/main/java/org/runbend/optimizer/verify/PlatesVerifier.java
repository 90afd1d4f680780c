package org.runbend.optimizer.verify;

import java.util.Comparator;
import java.util.List;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.verify.StretchReckoning.Span;

/**
 * Holds a plate plan against floor, loops, catalog and shelf, from records and plain geometry alone; it shares no line
 * with what plans plates. Lengths in mm, areas in mm2, money in minor units. Loops are called A, B, ..., elements and
 * pieces count from 0.
 *
 * <p>Rules: pieces lie on runs, are long enough, keep off bends and their gap from each other; bodies stay on the floor
 * (1 mm), off bare keep-outs and unheated floor (1 mm) and off each other (slivers under 25 mm2 are forgiven); every piece
 * is one cut of one stock plate; cuts and kerfs fit; stock is sold or lies on the shelf; sums, costs and the asked
 * coverage hold. Stretches are reckoned anew; the sum claimed may differ by 2 mm and 0.5 %, which slivers can make.
 */
public final class PlatesVerifier {
    private static final double FORGIVEN = 0.05;
    private static final double LAST_STEP = 10;
    private static final double SUM = 1;

    private final Job.PlateRequest request;
    private final List<Point> outline;
    private final List<KeepOut> keepOuts;
    private final List<Shape.Polygon> unheated;
    private final Shelf shelf;
    private final double lastStep;

    /**
     * What a plan is held against.
     *
     * @param request the plates wanted
     * @param outline corners in order
     * @param keepOuts what plates keep off
     * @param unheated where no plate is bought for
     * @param shelf what lies on the shelf
     */
    public PlatesVerifier(
            Job.PlateRequest request,
            List<Point> outline,
            List<KeepOut> keepOuts,
            List<Shape.Polygon> unheated,
            Shelf shelf) {
        this.request = request;
        this.outline = List.copyOf(outline);
        this.keepOuts = List.copyOf(keepOuts);
        this.unheated = List.copyOf(unheated);
        this.shelf = shelf;
        lastStep = request.products().stream()
                .filter(p -> p.grooves() == 1)
                .mapToDouble(SpreaderPlate::step)
                .reduce(LAST_STEP, Math::max);
    }

    /** One sentence for each rule broken, naming the piece and both numbers; empty for a sound plan. */
    public List<Finding> verify(List<Breakdown> loops, PlatePlan plan) {
        Findings findings = new Findings();
        StretchReckoning reckoning = new StretchReckoning(
                request,
                outline,
                keepOuts,
                unheated,
                loops.stream().flatMap(l -> l.slots().stream()).toList());
        List<Span> laid = new PlateBodies(request, outline, keepOuts, unheated, reckoning, loops, findings)
                .check(plan.pieces()).stream()
                        .sorted(Comparator.comparingInt(Span::loop)
                                .thenComparingInt(Span::element)
                                .thenComparingDouble(Span::from))
                        .toList();
        checkGaps(laid, findings);
        checkLengths(plan, findings);
        checkSums(loops, plan, laid, findings);
        checkCoverage(reckoning.stretches(loops), plan, laid, findings);
        new PlateStockRules(request.products(), shelf, findings).check(plan);
        return findings.all();
    }

    private void checkGaps(List<Span> laid, Findings findings) {
        for (int i = 1; i < laid.size(); i++) {
            Span a = laid.get(i - 1);
            Span b = laid.get(i);
            if (a.loop() == b.loop() && a.element() == b.element()) {
                findings.unless(
                        b.from() - a.to() >= request.gap() - FORGIVEN,
                        "%s: a gap of %.2f mm between two pieces, %.2f mm asked",
                        PlateBodies.runName(a.loop(), a.element()),
                        b.from() - a.to(),
                        request.gap());
            }
        }
    }

    /** Lengths are in whole hundredths of mm. */
    private void checkLengths(PlatePlan plan, Findings findings) {
        long different = plan.pieces().stream()
                .map(p -> Math.round(p.length() * 100))
                .distinct()
                .count();
        findings.unless(
                request.maxLengths().isEmpty()
                        || different <= request.maxLengths().getAsInt(),
                "plates: %d different lengths, %d allowed",
                different,
                request.maxLengths().orElse(0));
    }

    private static void checkSums(List<Breakdown> loops, PlatePlan plan, List<Span> laid, Findings findings) {
        double straight = 0;
        for (Breakdown loop : loops) {
            for (Element e : loop.laid()) {
                straight += e instanceof Element.Run
                        ? GroundShapes.line(e.from(), e.to()).getLength()
                        : 0;
            }
        }
        double plated = 0;
        for (Span s : laid) {
            plated += s.length();
        }
        findings.unless(
                Math.abs(plated - plan.plated()) <= SUM,
                "plates: plated %.2f mm is claimed, the pieces add up to %.2f mm",
                plan.plated(),
                plated);
        findings.unless(
                Math.abs(straight - plan.straight()) <= SUM,
                "plates: straight %.2f mm is claimed, the runs add up to %.2f mm",
                plan.straight(),
                straight);
        double coverage = straight > 0 ? plated / straight : 0;
        findings.unless(
                Math.abs(coverage - plan.coverage()) <= 0.001,
                "plates: a coverage of %.4f is claimed, plated over straight is %.4f",
                plan.coverage(),
                coverage);
    }

    private void checkCoverage(List<Span> stretches, PlatePlan plan, List<Span> laid, Findings findings) {
        double plateable = 0;
        double sure = 0;
        double covered = 0;
        for (Span stretch : stretches) {
            plateable += stretch.length();
            double own = coveredOf(stretch, laid);
            covered += own;
            sure += isDoubtful(stretch) ? 0 : stretch.length();
            double least = isDoubtful(stretch) ? 0 : request.leastPerRun() * (stretch.length() - lastStep);
            findings.unless(
                    own >= least - SUM,
                    "%s: %.2f mm are covered, %.2f mm asked of each run",
                    PlateBodies.runName(stretch.loop(), stretch.element()),
                    own,
                    least);
        }
        double noise = 2 + 0.005 * plateable;
        findings.unless(
                plan.plateable() >= sure - noise && plan.plateable() <= plateable + noise,
                "plates: plateable %.2f mm is claimed, the stretches add up to %.2f mm",
                plan.plateable(),
                plateable);
        double counted = Math.min(plateable, plan.plateable());
        double asked = request.coverage() * Math.max(0, counted - lastStep * stretches.size());
        findings.unless(
                covered >= asked - SUM,
                "plates: covered %.2f mm of %.2f mm plateable, %.2f mm asked",
                covered,
                plateable,
                asked);
    }

    /** Whether rounding decides if a stretch is as long as a least piece, so that it may count or not. */
    private boolean isDoubtful(Span stretch) {
        return stretch.length() < request.minPiece() + StretchReckoning.FORGIVEN;
    }

    /** Pieces of a stretch and the gaps between them. */
    private double coveredOf(Span stretch, List<Span> laid) {
        double covered = 0;
        int pieces = 0;
        for (Span s : laid) {
            if (s.loop() == stretch.loop()
                    && s.element() == stretch.element()
                    && s.from() >= stretch.from() - SUM
                    && s.to() <= stretch.to() + SUM) {
                covered += s.length();
                pieces++;
            }
        }
        return covered + request.gap() * Math.max(0, pieces - 1);
    }
}
