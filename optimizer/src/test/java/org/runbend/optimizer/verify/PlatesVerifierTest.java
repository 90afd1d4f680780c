package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.runbend.optimizer.plan.SoundKit.assertFound;
import static org.runbend.optimizer.plan.SoundKit.bend;
import static org.runbend.optimizer.plan.SoundKit.piece;
import static org.runbend.optimizer.plan.SoundKit.points;
import static org.runbend.optimizer.plan.SoundKit.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.SoundKit;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePiece.Place;
import org.runbend.optimizer.plates.PlatePlan;

/** Each rule: sound hand-made plans pass, and one change that breaks the rule is found and named. */
class PlatesVerifierTest {
    private static final PlatePlan SOUND = SoundKit.plates();
    private static final PlateCut STOCK = SOUND.stock().get(0);
    private static final PlatePiece SECOND = piece(100, 2, 25);

    /** Two rows of six nodes: runs of 675 mm at y = 75 (rightwards) and y = 225 (leftwards). */
    private static final Breakdown ROWS = new Breakdown(
            List.of(run(75, 75, 750, 75), bend(750, 75, 750, 225, 750, 150, 180), run(750, 225, 75, 225)));

    @Test
    void soundPlanHasNothingAgainstIt() {
        assertEquals(List.of(), found(SOUND));
    }

    @Test
    void soundTwinPlanHasNothingAgainstIt() {
        assertEquals(List.of(), foundOnRows(twin(new Place(0, 0, 0), new Place(0, 2, 75))));
    }

    @Test
    void twinOnShiftedPlaces() {
        // the second groove 20 mm further along: ends lie hypot(150, 20) = 151.33 mm apart
        assertFound(
                foundOnRows(twin(new Place(0, 0, 0), new Place(0, 2, 55))),
                "piece 0 of SP-2",
                "151.33 and 151.33 mm apart",
                "150.00 mm");
    }

    @Test
    void twinOnOneRun() {
        assertFound(foundOnRows(twin(new Place(0, 0, 0))), "piece 0 of SP-2", "lies on 1 runs", "2 grooves");
    }

    @Test
    void tooManyLengths() {
        Job.PlateRequest few = SoundKit.WISH.withLengths(OptionalInt.of(1));
        PlatesVerifier verifier =
                new PlatesVerifier(few, SoundKit.OUTLINE, SoundKit.KEEP_OUTS, List.of(), SoundKit.SHELF);
        assertFound(verifier.verify(List.of(SoundKit.loop()), SOUND), "2 different lengths", "1 allowed");
    }

    @Test
    void pieceOnBend() {
        assertFound(found(pieces(piece(350, 0, 0), piece(100, 1, 25))), "piece 1", "loop A element 1", "no run");
        assertFound(found(pieces(piece(350, 0, 0), piece(100, 9, 25))), "piece 1", "loop A element 9", "no run");
    }

    @Test
    void pieceTooShort() {
        assertFound(found(pieces(piece(90, 0, 0), SECOND)), "piece 0 of SP-1", "90.00 mm", "least piece of 100.00 mm");
    }

    @Test
    void pieceLeavesItsRun() {
        assertFound(found(pieces(piece(350, 0, -10), SECOND)), "element 0", "-10.00 to 340.00", "375.00 mm");
    }

    @Test
    void pieceTooNearABend() {
        assertFound(found(pieces(piece(350, 0, 10), SECOND)), "loop A element 0", "10.00 to 360.00", "0.00 to 350.00");
        assertFound(
                found(pieces(piece(350, 0, 0), piece(100, 2, 20))), "element 2", "20.00 to 120.00", "25.00 to 125.00");
    }

    @Test
    void gapTooSmall() {
        PlatePlan plan = pieces(piece(120, 0, 0), piece(120, 0, 123), SECOND);
        assertFound(found(plan), "loop A element 0", "gap of 3.00 mm", "5.00 mm");
    }

    @Test
    void unknownProduct() {
        PlatePiece other = new PlatePiece("SP-9", 350, List.of(new Place(0, 0, 0)));
        assertFound(found(pieces(other, SECOND)), "piece 0 of SP-9", "none of the 2 products");
    }

    @Test
    void bodyOutsideTheOutline() {
        // the body of element 0 reaches down to y = 75 - 60 = 15, here 5 mm x 350 mm less the 1 mm forgiven
        List<Finding> found = found(points(0, 20, 600, 20, 600, 450, 0, 450), List.of(), List.of(), SOUND);
        assertFound(found, "piece 0 of SP-1", "1400.00 mm2", "outside the outline", "0.00 mm2");
    }

    @Test
    void bodyOnKeepOut() {
        KeepOut box = new KeepOut(
                "box", KeepOut.Kind.OTHER, new Shape.Polygon(points(200, 130, 240, 130, 240, 150, 200, 150)), 20);
        // the body reaches up to y = 135, 5 mm over the box's side
        assertFound(
                found(SoundKit.OUTLINE, List.of(box), List.of(), SOUND),
                "piece 0 of SP-1",
                "within 0.00 mm of keep-out 'box'",
                "5.00 mm asked");
    }

    @Test
    void spotIsAPointGrownByPlateClearance() {
        KeepOut near = new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(200, 130), 0), 50);
        assertFound(
                found(SoundKit.OUTLINE, List.of(near), List.of(), SOUND),
                "piece 0",
                "within 0.00 mm of keep-out 'bolt'",
                "5.00 mm asked");
        KeepOut off = new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(200, 141), 0), 50);
        assertEquals(List.of(), found(SoundKit.OUTLINE, List.of(off), List.of(), SOUND));
    }

    @Test
    void bodiesOverlap() {
        assertFound(
                found(pieces(piece(350, 0, 0), piece(100, 0, 200), SECOND)),
                "piece 0 of SP-1 and piece 1 of SP-1",
                "overlap by 12000.00 mm2",
                "25.00 mm2");
    }

    @Test
    void pieceOnUnheatedFloor() {
        Shape.Polygon cold = new Shape.Polygon(points(300, 0, 350, 0, 350, 200, 300, 200));
        assertFound(
                found(SoundKit.OUTLINE, List.of(), List.of(cold), SOUND),
                "piece 0 of SP-1 on loop A element 0",
                "50.00 mm lie on unheated floor",
                "1.00 mm");
    }

    @Test
    void stretchesEndAtUnheatedFloorAndKeepOuts() {
        // cold from x = 300 to 350 leaves 225 mm and 75 mm (under the least piece) of element 0's 350 mm
        Shape.Polygon cold = new Shape.Polygon(points(300, 0, 350, 0, 350, 200, 300, 200));
        PlatePlan plan = changed(List.of(piece(220, 0, 0), SECOND), stock(220, 100, 874), 325, 320);
        assertEquals(List.of(), found(SoundKit.OUTLINE, List.of(), List.of(cold), plan));
        // a pillar from x = 200 to 240 grown by 5 mm leaves 75..195 = 120 mm and 245..425 = 180 mm
        KeepOut pillar = new KeepOut(
                "pillar", KeepOut.Kind.PILLAR, new Shape.Polygon(points(200, 100, 240, 100, 240, 130, 200, 130)), 20);
        PlatePlan around = new PlatePlan(
                List.of(piece(120, 0, 0), piece(180, 0, 170), SECOND),
                List.of(new PlateCut("SP-1", 1200, List.of(180.0, 120.0, 100.0), 791, Optional.empty())),
                3,
                400,
                400,
                600,
                1500,
                1500,
                "",
                4500,
                List.of());
        assertEquals(List.of(), found(SoundKit.OUTLINE, List.of(pillar), List.of(), around));
    }

    /** Cold from x = 300 to 325.05 leaves 225 mm and 99.95 mm; the least piece is 100 mm, so rounding decides. */
    @Test
    void aStretchJustAsLongAsALeastPieceMayCountOrNot() {
        List<Shape.Polygon> cold = List.of(new Shape.Polygon(points(300, 0, 325.05, 0, 325.05, 200, 300, 200)));
        PlatePlan without = changed(List.of(piece(220, 0, 0), SECOND), stock(220, 100, 874), 325, 320);
        assertEquals(List.of(), found(SoundKit.OUTLINE, List.of(), cold, without));
        PlatePlan more = changed(List.of(piece(220, 0, 0), SECOND), stock(220, 100, 874), 430, 320);
        assertFound(found(SoundKit.OUTLINE, List.of(), cold, more), "plateable 430.00 mm", "424.95 mm");
    }

    /** Cold from x = 300 to 310 leaves two stretches less than a gap of 20 mm apart: the later one begins later. */
    @Test
    void stretchesOfARunKeepTheGap() {
        Job.PlateRequest w = SoundKit.WISH;
        Job.PlateRequest wide = new Job.PlateRequest(
                w.products(),
                Job.Share.of(w.coverage()),
                new Job.Gaps(w.bendClearance(), 20, w.plateClearance()),
                Job.Pieces.from(w.minPiece()));
        List<Shape.Polygon> cold = List.of(new Shape.Polygon(points(300, 0, 310, 0, 310, 200, 300, 200)));
        PlatePlan plan = changed(List.of(piece(220, 0, 0), SECOND), stock(220, 100, 874), 430, 320);
        List<Finding> found = new PlatesVerifier(wide, SoundKit.OUTLINE, List.of(), cold, SoundKit.SHELF)
                .verify(List.of(SoundKit.loop()), plan);
        // 225 mm, then 425 - (300 + 20) = 105 mm, and 100 mm of the other run: 430 mm.
        assertFound(found, "covered 320.00 mm of 430.00 mm", "340.00 mm");
    }

    /** Half of 350 mm less a step is asked of the first run; the second one, 100 mm, is under the least piece and the step. */
    @Test
    void eachRunHasItsShare() {
        Job.PlateRequest each = SoundKit.WISH.withLeastPerRun(0.5);
        assertEquals(List.of(), found(each, SOUND));
        List<Finding> bare = found(each, changed(List.of(SECOND), stock(100, 0, 1097), 450, 100));
        assertFound(bare, "0.00 mm are covered", "asked of each run");
    }

    private static List<Finding> found(Job.PlateRequest request, PlatePlan plan) {
        return new PlatesVerifier(
                        request,
                        SoundKit.OUTLINE,
                        SoundKit.KEEP_OUTS,
                        List.of(SoundKit.LOCKER.region()),
                        SoundKit.SHELF)
                .verify(List.of(SoundKit.loop()), plan);
    }

    @Test
    void stretchesEndWhereTheBodyWouldLeaveTheFloor() {
        // a corner cut out at x = 325..., y under 30 ends the body, which reaches down to y = 15
        List<Point> outline = points(0, 0, 325, 0, 325, 30, 600, 30, 600, 450, 0, 450);
        PlatePlan plan = changed(List.of(piece(250, 0, 0), SECOND), stock(250, 100, 844), 350, 350);
        assertEquals(List.of(), found(outline, List.of(), List.of(), plan));
    }

    @Test
    void pieceIsNotCut() {
        assertFound(found(withStock(stock(350, 1, 744))), "product SP-1", "2 pieces, 1 cuts");
        assertFound(found(withStock(stock(350, 90, 754))), "product SP-1", "piece of 100.00", "cut of 90.00");
    }

    @Test
    void cutsDoNotFit() {
        PlateCut over = new PlateCut("SP-1", 450, List.of(350.0, 100.0), 0, Optional.empty());
        assertFound(found(withStock(over)), "stock plate 0 of SP-1", "453.00 mm do not fit its 450.00 mm");
    }

    @Test
    void lastCutNeedsNoKerf() {
        // 350 + 3 + 100 = 453: fits, and the length left is under a kerf
        PlateCut exact = new PlateCut("SP-1", 453, List.of(350.0, 100.0), 0, Optional.empty());
        List<Finding> found = found(withStock(exact));
        assertEquals(
                List.of(),
                found.stream()
                        .filter(v ->
                                v.toString().contains("fit") || v.toString().contains("offcut"))
                        .toList());
        assertFound(found, "stock plate 0", "453.00 mm is not sold");
    }

    @Test
    void kerfUnderTheProducts() {
        assertFound(
                found(new PlatePlan(SOUND.pieces(), SOUND.stock(), 2, 450, 450, 600, 1500, 1500, "", 3000, List.of())),
                "2.00 mm",
                "3.00 mm");
    }

    @Test
    void wrongOffcut() {
        assertFound(found(withStock(stock(350, 100, 750))), "stock plate 0", "offcut of 750.00 mm", "744.00 mm");
    }

    @Test
    void shelfRules() {
        PlateCut o3 = new PlateCut("SP-1", 460, List.of(350.0, 100.0), 4, Optional.of("O3"));
        assertEquals(List.of(), found(costing(List.of(o3), 0, 0, 3000)));
        PlateCut none = new PlateCut("SP-1", 460, List.of(350.0, 100.0), 4, Optional.of("O9"));
        assertFound(found(costing(List.of(none), 0, 0, 0)), "O9", "not lie on the shelf");
        PlateCut longer = new PlateCut("SP-1", 470, List.of(350.0, 100.0), 14, Optional.of("O3"));
        assertFound(found(costing(List.of(longer), 0, 0, 0)), "O3", "460.00 mm", "470.00 mm");
        assertFound(found(costing(List.of(o3, o3), 0, 0, 0)), "stock plate 1", "O3 from the shelf is used twice");
    }

    @Test
    void stockWithoutCuts() {
        PlateCut idle = new PlateCut("SP-1", 1200, List.of(), 1200, Optional.empty());
        assertFound(found(costing(List.of(STOCK, idle), 3000, 0, 3000)), "stock plate 1 of SP-1", "0 cuts");
    }

    @Test
    void stockOfUnknownProduct() {
        PlateCut other = new PlateCut("SP-9", 1200, List.of(100.0), 1097, Optional.empty());
        assertFound(found(costing(List.of(STOCK, other), 1500, 0, 3000)), "stock plate 1 of SP-9", "none of the 2");
    }

    @Test
    void wrongCosts() {
        assertFound(found(costing(SOUND.stock(), 1400, 1400, 3000)), "bought 1400", "cost 1500");
        assertFound(found(costing(SOUND.stock(), 1500, 1501, 3000)), "bound 1501", "bought 1500");
        assertFound(found(costing(SOUND.stock(), 1500, 1500, 1499)), "bought 1500", "run-by-run cost 1499");
    }

    @Test
    void wrongSums() {
        assertFound(found(sums(450, 460, 600)), "plated 460.00 mm", "450.00 mm");
        assertFound(found(sums(450, 450, 610)), "straight 610.00 mm", "600.00 mm");
        assertFound(found(sums(450, 450, 610)), "coverage of 0.7377", "0.7500");
        assertFound(found(sums(460, 450, 600)), "plateable 460.00 mm", "450.00 mm");
    }

    @Test
    void coveredLessThanAsked() {
        // 85 % of 450 mm less two last steps of 10 mm is 365.5 mm
        PlatePlan plan = changed(List.of(piece(250, 0, 0), SECOND), stock(250, 100, 844), 450, 350);
        assertFound(found(plan), "covered 350.00 mm of 450.00 mm", "365.50 mm");
    }

    @Test
    void allButTheLastStepsIsAll() {
        PlatePlan plan = changed(List.of(piece(340, 0, 0), SECOND), stock(340, 100, 754), 450, 440);
        PlatesVerifier all = new PlatesVerifier(
                SoundKit.request(1), SoundKit.OUTLINE, SoundKit.KEEP_OUTS, List.of(), SoundKit.SHELF);
        assertEquals(List.of(), all.verify(List.of(SoundKit.loop()), plan));
    }

    private static List<Finding> found(PlatePlan plan) {
        return found(SoundKit.OUTLINE, SoundKit.KEEP_OUTS, List.of(SoundKit.LOCKER.region()), plan);
    }

    private static List<Finding> found(
            List<Point> outline, List<KeepOut> keepOuts, List<Shape.Polygon> unheated, PlatePlan plan) {
        return new PlatesVerifier(SoundKit.WISH, outline, keepOuts, unheated, SoundKit.SHELF)
                .verify(List.of(SoundKit.loop()), plan);
    }

    private static List<Finding> foundOnRows(PlatePlan plan) {
        Job.PlateRequest request = SoundKit.request(0.9);
        return new PlatesVerifier(request, points(0, 0, 900, 0, 900, 300, 0, 300), List.of(), List.of(), SoundKit.SHELF)
                .verify(List.of(ROWS), plan);
    }

    /** A piece of 600 mm in both grooves: two stretches of 675 - 25 = 650 mm, 1200 of 1300 mm plated. */
    private static PlatePlan twin(Place... places) {
        return new PlatePlan(
                List.of(new PlatePiece("SP-2", 600, List.of(places))),
                List.of(new PlateCut("SP-2", 1200, List.of(600.0), 597, Optional.empty())),
                3,
                1300,
                1200,
                1350,
                2600,
                2600,
                "",
                2600,
                List.of());
    }

    private static PlateCut stock(double first, double second, double offcut) {
        List<Double> cuts = second > 1 ? List.of(first, second) : List.of(first);
        return new PlateCut("SP-1", 1200, cuts, offcut, Optional.empty());
    }

    private static PlatePlan pieces(PlatePiece... pieces) {
        return new PlatePlan(List.of(pieces), SOUND.stock(), 3, 450, 450, 600, 1500, 1500, "", 3000, List.of());
    }

    private static PlatePlan withStock(PlateCut stock) {
        return costing(List.of(stock), 1500, 1500, 3000);
    }

    private static PlatePlan costing(List<PlateCut> stock, long bought, long bound, long runByRun) {
        return new PlatePlan(SOUND.pieces(), stock, 3, 450, 450, 600, bought, bound, "", runByRun, List.of());
    }

    private static PlatePlan sums(double plateable, double plated, double straight) {
        return new PlatePlan(
                SOUND.pieces(), SOUND.stock(), 3, plateable, plated, straight, 1500, 1500, "", 3000, List.of());
    }

    private static PlatePlan changed(List<PlatePiece> pieces, PlateCut stock, double plateable, double plated) {
        return new PlatePlan(pieces, List.of(stock), 3, plateable, plated, 600, 1500, 1500, "", 3000, List.of());
    }
}
