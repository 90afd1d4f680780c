package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.SoundKit;

/** What is measured on a loop, reckoned by hand: survivors of mutants that no other test of the package noticed. */
class MeasuresTest {
    private static final double ROUNDING = 1e-9;

    private static Element.Run run(double x1, double y1, double x2, double y2) {
        return new Element.Run(new Point(x1, y1), new Point(x2, y2));
    }

    /** A bend about a centre from one angle over another, degrees, anticlockwise positive. */
    private static Element.Bend bend(double x, double y, double radius, double from, double turn) {
        return new Element.Bend(at(x, y, radius, from), at(x, y, radius, from + turn), new Point(x, y), radius, turn);
    }

    private static Point at(double x, double y, double radius, double degrees) {
        double a = Math.toRadians(degrees);
        return new Point(x + radius * Math.cos(a), y + radius * Math.sin(a));
    }

    /**
     * Two lead-ins of 40 and 30 mm, between them 100, half a circle of 50 and 100. The port lies 30 and 40 mm off the first end
     * (50 mm) and off the last one 120 and 50 mm (130 mm): 40 + 100 + 157.08 + 100 + 30 + 50 + 130 + 900 + 1100 = 2607.08, and
     * 2 % more, 2659.2, is cut at 2660.
     */
    @Test
    void loopBetweenLeads() {
        Point port = SoundKit.job(OptionalDouble.empty()).floor().port().at();
        double x = port.x() + 30;
        double y = port.y() + 40;
        Breakdown loop = new Breakdown(List.of(
                        run(x + 40, y, x + 140, y),
                        bend(x + 140, y + 50, 50, -90, 180),
                        run(x + 140, y + 100, x + 40, y + 100)))
                .between(List.of(run(x, y, x + 40, y)), List.of(run(x + 40, y + 100, port.x() + 120, port.y() + 50)));
        assertEquals(List.of(true, false, false, false, true), leads(loop));
        assertEquals(3, loop.laid().size());
        assertEquals(200, loop.straightLength(), ROUNDING);
        assertEquals(3, loop.pipe().size(), "a lead that goes straight on is one with its run");
        assertEquals(140, loop.pipe().get(0).length(), ROUNDING);
        double last = new Point(x + 40, y + 100).distance(new Point(port.x() + 120, port.y() + 50));
        double floor = 40 + 100 + 50 * Math.PI + 100 + last;
        assertEquals(floor, loop.floorLength(), ROUNDING);
        Job job = SoundKit.job(OptionalDouble.empty());
        assertEquals(50 + 130, CutLength.outside(job, loop), ROUNDING);
        assertEquals(
                floor + CutLength.flowEnd(job, loop) + CutLength.returnEnd(job, loop),
                floor + 180 + 900 + 1100,
                ROUNDING,
                "tails are measured from the port");
        assertEquals((long) Math.ceil((floor + 180 + 900 + 1100) * 1.02), CutLength.of(job, loop));
    }

    private static List<Boolean> leads(Breakdown loop) {
        return IntStream.range(0, loop.elements().size()).mapToObj(loop::isLead).toList();
    }

    /** The longest coil of the kit is 25 m; a limit under it counts, one over it does not. */
    @Test
    void longestCut() {
        double coil = CutLength.longest(SoundKit.job(OptionalDouble.empty()));
        assertTrue(coil > 1000);
        assertEquals(coil - 500, CutLength.longest(SoundKit.job(OptionalDouble.of(coil - 500))), ROUNDING);
        assertEquals(coil, CutLength.longest(SoundKit.job(OptionalDouble.of(coil + 500))), ROUNDING);
    }

    @Test
    void bendsAsPeopleCountThem() {
        assertEquals("no bends", BendCount.of(List.of(run(0, 0, 1, 0))).words());
        Element quarter = bend(0, 0, 50, 0, 90);
        Element back = bend(0, 0, 50, 90, -180);
        assertEquals("1 quarter bend", BendCount.of(List.of(quarter)).words());
        assertEquals("1 return bend", BendCount.of(List.of(back)).words());
        assertEquals(
                "2 return bends and 1 quarter bend",
                BendCount.of(List.of(back, quarter, back)).words());
        Breakdown one = new Breakdown(List.of(back, quarter));
        assertEquals(new BendCount(2, 2), BendCount.ofAll(List.of(one, one)));
    }

    /** Runs of 100 over one of 100 from 30 on: 70 mm in common, whichever way they go; half a millimetre aside is forgiven. */
    @Test
    void runsOnOneLine() {
        List<Element> one = List.of(run(0, 0, 100, 0));
        assertEquals(70, SamePipe.common(one, List.of(run(30, 0, 130, 0))), ROUNDING);
        assertEquals(70, SamePipe.common(one, List.of(run(130, 0.4, 30, 0.4))), ROUNDING);
        assertEquals(0, SamePipe.common(one, List.of(run(30, 0.6, 130, 0.6))), ROUNDING);
        assertEquals(0, SamePipe.common(one, List.of(run(30, 0, 130, 5))), ROUNDING, "it leaves the line");
        assertEquals(0, SamePipe.common(one, List.of(run(100, 0, 200, 0))), ROUNDING, "it begins where the other ends");
        assertEquals(60, SamePipe.common(run(10, 10, 10, 70), List.of(run(10, 0, 10, 90))), ROUNDING);
    }

    /** Arcs of 50 mm about one centre: 0 to 90 and 300 to 390 degrees share 30 degrees. */
    @Test
    void bendsAboutOneCentre() {
        List<Element> one = List.of(bend(5, 5, 50, 0, 90));
        double thirty = 50 * Math.toRadians(30);
        assertEquals(thirty, SamePipe.common(one, List.of(bend(5, 5, 50, 300, 90))), ROUNDING);
        assertEquals(thirty, SamePipe.common(one, List.of(bend(5, 5, 50, 390, -90))), ROUNDING);
        assertEquals(0, SamePipe.common(one, List.of(bend(5, 5, 51, 300, 90))), ROUNDING);
        assertEquals(0, SamePipe.common(one, List.of(bend(5, 6, 50, 300, 90))), ROUNDING);
        assertEquals(0, SamePipe.common(one, List.of(run(5, 5, 55, 5))), ROUNDING);
        assertFalse(SamePipe.common(one, one) < 50 * Math.PI / 2 - ROUNDING);
    }
}
