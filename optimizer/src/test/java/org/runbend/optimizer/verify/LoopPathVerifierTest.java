package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.runbend.optimizer.plan.SoundKit.assertFound;
import static org.runbend.optimizer.plan.SoundKit.bend;
import static org.runbend.optimizer.plan.SoundKit.points;
import static org.runbend.optimizer.plan.SoundKit.run;
import static org.runbend.optimizer.plan.SoundKit.with;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.SoundKit;

/** Each rule: the hand-made loop passes, and one change that breaks the rule is found and named. */
class LoopPathVerifierTest {
    private static final List<Element> SOUND = SoundKit.loop().elements();

    @Test
    void soundLoopHasNothingAgainstIt() {
        assertEquals(List.of(), found(SOUND));
    }

    @Test
    void holeBetweenElements() {
        assertFound(found(with(SOUND, 0, run(75, 75, 448, 75))), "loop A element 1", "starts 2.00 mm", "0.05 mm");
    }

    @Test
    void runAfterRun() {
        List<Element> split = new ArrayList<>(SOUND);
        split.set(0, run(75, 75, 200, 75));
        split.add(1, run(200, 75, 450, 75));
        assertFound(found(split), "loop A element 1", "run follows a run", "250.00 mm", "125.00 mm");
    }

    @Test
    void kinkAtJoint() {
        // atan(1 / 375) = 0.15 degrees
        assertFound(found(with(SOUND, 0, run(75, 76, 450, 75))), "loop A element 1", "kink of 0.15 degrees", "0.10");
    }

    @Test
    void noKinkUnderATenthOfADegree() {
        // atan(0.5 / 375) = 0.076 degrees
        assertEquals(List.of(), found(with(SOUND, 0, run(75, 75.5, 450, 75))));
    }

    @Test
    void equalHandedBendsAreOne() {
        List<Element> split = new ArrayList<>(SOUND);
        split.set(3, bend(525, 300, 450, 375, 450, 300, 90));
        split.add(4, bend(450, 375, 375, 300, 450, 300, 90));
        assertFound(found(split), "loop A element 4", "equal-handed bends of 90.0 and 90.0", "are one bend");
    }

    @Test
    void radiusDisagreesWithEnds() {
        Element.Bend off = new Element.Bend(new Point(450, 75), new Point(525, 150), new Point(450, 150), 80, 90);
        assertFound(found(with(SOUND, 1, off)), "loop A element 1", "75.00 and 75.00 mm", "radius is 80.00 mm");
    }

    @Test
    void centreDisagreesWithEnds() {
        assertFound(
                found(with(SOUND, 1, bend(450, 75, 525, 150, 450, 152, 90))),
                "loop A element 1",
                "77.00 and 75.03 mm",
                "radius is 75.00 mm");
    }

    @Test
    void turnDisagreesWithEnds() {
        // a chord of 10 degrees at 75 mm: 2 x 75 x sin 5 = 13.07 mm
        assertFound(
                found(with(SOUND, 1, bend(450, 75, 525, 150, 450, 150, 80))),
                "loop A element 1",
                "turn of 80.00 degrees",
                "13.07 mm");
    }

    @Test
    void fullTurnIsNoBend() {
        assertFound(
                found(with(SOUND, 1, bend(450, 75, 450, 75, 450, 150, 360))), "element 1", "less than 360", "360.00");
    }

    @Test
    void runWithoutLength() {
        List<Element> more = new ArrayList<>(SOUND);
        more.add(4, run(375, 300, 375, 300));
        assertFound(found(more), "loop A element 4", "no length", "0.000 mm");
    }

    @Test
    void radiusUnderThePipes() {
        List<Finding> found = verifier(SoundKit.OUTLINE, 75, SoundKit.KEEP_OUTS, SoundKit.PORT, 80)
                .verify(List.of(new Breakdown(SOUND)));
        assertFound(found, "loop A element 3", "radius 75.00 mm", "least radius 80.00 mm");
    }

    @Test
    void pipeCrossesItself() {
        List<Element> more = new ArrayList<>(SOUND);
        more.set(6, run(75, 300, 75, 60));
        assertFound(found(more), "loop A", "crosses itself at (75.00, 75.00)");
    }

    @Test
    void loopsCross() {
        Breakdown upright = new Breakdown(List.of(run(150, 75, 150, 225)));
        List<Finding> found = verifier().verify(List.of(new Breakdown(SOUND), upright));
        assertFound(found, "loop A element 0 and loop B element 0", "loops cross", "0.00 mm", "150.00 mm");
    }

    @Test
    void loopsTooNear() {
        Breakdown beside = new Breakdown(List.of(run(165, 150, 165, 180)));
        List<Finding> found = verifier().verify(List.of(new Breakdown(SOUND), beside));
        assertFound(found, "loop A element 0 and loop B element 0", "within 75.00 mm", "135.00 mm");
    }

    @Test
    void outsideTheOutline() {
        assertFound(
                found(with(SOUND, 6, run(75, 300, -10, 300))), "loop A element 6", "leaves the outline", "10.00 mm");
    }

    @Test
    void tooNearTheOutline() {
        List<Finding> found = verifier(points(0, 0, 594, 0, 594, 450, 0, 450), 75, List.of(), SoundKit.PORT, 55)
                .verify(List.of(new Breakdown(SOUND)));
        assertFound(found, "loop A element 2", "within 69.00 mm of the outline", "75.00 mm");
        assertTrue(found.stream().noneMatch(v -> v.toString().contains("element 6")), found::toString);
    }

    @Test
    void arcTooNearTheOutline() {
        List<Finding> found = verifier(points(0, 0, 600, 0, 600, 449, 0, 449), 75, List.of(), SoundKit.PORT, 55)
                .verify(List.of(new Breakdown(SOUND)));
        assertFound(found, "loop A element 5", "within 74.00 mm of the outline", "75.00 mm");
    }

    @Test
    void keepOutsOfEachShape() {
        // the lowest point of element 4 is (300, 225); the run below lies at y = 75
        assertFound(
                foundWith(new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(300, 115), 0), 60)),
                "loop A element 0",
                "within 40.00 mm of keep-out 'bolt'",
                "60.00 mm");
        assertFound(
                foundWith(new KeepOut("vent", KeepOut.Kind.VENT, new Shape.Circle(new Point(300, 150), 30), 60)),
                "loop A element 4",
                "within 45.0",
                "'vent'",
                "60.00 mm");
        assertFound(
                foundWith(new KeepOut(
                        "box",
                        KeepOut.Kind.OTHER,
                        new Shape.Polygon(points(100, 90, 200, 90, 200, 120, 100, 120)),
                        20)),
                "loop A element 0",
                "within 15.00 mm of keep-out 'box'",
                "20.00 mm");
    }

    @Test
    void keepOutWithoutClearanceIsNotEntered() {
        assertFound(
                foundWith(new KeepOut(
                        "box", KeepOut.Kind.OTHER, new Shape.Polygon(points(100, 60, 200, 60, 200, 120, 100, 120)), 0)),
                "loop A element 0",
                "goes 15.00 mm into keep-out 'box'",
                "0.00 mm");
        assertEquals(
                List.of(),
                foundWith(new KeepOut(
                        "box",
                        KeepOut.Kind.OTHER,
                        new Shape.Polygon(points(100, 75, 200, 75, 200, 120, 100, 120)),
                        0)));
    }

    @Test
    void endsFarFromThePort() {
        List<Finding> found = verifier(SoundKit.OUTLINE, 75, List.of(), new Point(500, 200), 55)
                .verify(List.of(new Breakdown(SOUND)));
        assertFound(found, "loop A", "begins 443.00 mm", "330.00 mm");
        assertFound(found, "loop A", "ends 425.73 mm", "330.00 mm");
    }

    @Test
    void endsApart() {
        // without the last run the ends are (75, 75) and (75, 300)
        assertFound(found(SOUND.subList(0, 6)), "loop A", "ends lie 225.00 mm apart", "165.00 mm");
    }

    @Test
    void parallelRunsTooNear() {
        Breakdown u = new Breakdown(List.of(
                run(75, 75, 450, 75),
                new Element.Bend(new Point(450, 75), new Point(450, 215), new Point(450, 145), 70, 180),
                run(450, 215, 75, 215)));
        assertFound(
                verifier().verify(List.of(u)),
                "loop A element 0 and loop A element 2",
                "parallel runs lie 140.00 mm apart",
                "145.50 mm");
    }

    @Test
    void pipeFurtherAlongTooNear() {
        // the return bend of element 4 sinks by 20 mm to y = 205, 130 mm over the run at y = 75
        List<Element> sunk = new ArrayList<>(SOUND);
        sunk.set(4, bend(375, 280, 225, 280, 300, 280, -180));
        sunk.add(4, run(375, 300, 375, 280));
        sunk.add(6, run(225, 280, 225, 300));
        assertFound(found(sunk), "loop A element 0 and loop A element 5", "within 130.0", "135.00 mm");
    }

    @Test
    void noLoop() {
        assertFound(verifier().verify(List.of()), "0 loops", "1 or more");
    }

    @Test
    void thousandNodesTakeNoTime() {
        // 250 columns of 4 nodes: 250 runs and 249 return bends; only its ends, 37 m apart, can be wrong
        List<Element> comb = new ArrayList<>();
        for (int i = 0; i < 250; i++) {
            double x = 75 + 150 * i;
            boolean up = i % 2 == 0;
            comb.add(up ? run(x, 150, x, 450) : run(x, 450, x, 150));
            double y = up ? 450 : 150;
            if (i < 249) {
                comb.add(bend(x, y, x + 150, y, x + 75, y, up ? -180 : 180));
            }
        }
        LoopPathVerifier verifier =
                verifier(points(0, 0, 37500, 0, 37500, 600, 0, 600), 75, List.of(), new Point(0, 150), 55);
        List<Finding> found = assertTimeout(Duration.ofSeconds(5), () -> verifier.verify(List.of(new Breakdown(comb))));
        assertEquals(2, found.size(), found::toString);
        assertFound(found, "ends 37425.00 mm from the port");
        assertFound(found, "ends lie 37350.00 mm apart");
    }

    private static LoopPathVerifier verifier() {
        return verifier(SoundKit.OUTLINE, 75, SoundKit.KEEP_OUTS, SoundKit.PORT, 55);
    }

    private static LoopPathVerifier verifier(
            List<Point> outline, double edge, List<KeepOut> keepOuts, Point port, double leastRadius) {
        return new LoopPathVerifier(outline, edge, keepOuts, 150, port, 330, leastRadius);
    }

    private static List<Finding> found(List<Element> elements) {
        return verifier().verify(List.of(new Breakdown(elements)));
    }

    private static List<Finding> foundWith(KeepOut keepOut) {
        return verifier(SoundKit.OUTLINE, 75, List.of(keepOut), SoundKit.PORT, 55)
                .verify(List.of(new Breakdown(SOUND)));
    }
}
