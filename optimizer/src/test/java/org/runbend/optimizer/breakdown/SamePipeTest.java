package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Point;

/** Which pipe lies where other pipe lies; expected parts worked out by hand. */
class SamePipeTest {
    private static final double NEAR = 1e-6;

    private static Element.Run run(double x1, double y1, double x2, double y2) {
        return new Element.Run(new Point(x1, y1), new Point(x2, y2));
    }

    /** A quarter or more of a circle of radius 75 about 0, 0 from its east point on. */
    private static Element.Bend bend(double turn) {
        double a = Math.toRadians(turn);
        return new Element.Bend(
                new Point(75, 0), new Point(75 * Math.cos(a), 75 * Math.sin(a)), new Point(0, 0), 75, turn);
    }

    @Test
    void runsByTheirOverlap() {
        Element whole = run(0, 0, 1000, 0);
        List<Element> others = List.of(run(400, 0, 100, 0), run(700, 0.3, 1200, 0.3), run(0, 10, 1000, 10));
        List<Element> on = SamePipe.parts(whole, others, true);
        List<Element> off = SamePipe.parts(whole, others, false);
        assertEquals(List.of(300.0, 300.0), on.stream().map(Element::length).toList());
        assertEquals(100, on.get(0).from().x(), NEAR);
        assertEquals(List.of(100.0, 300.0), off.stream().map(Element::length).toList());
        assertEquals(400, off.get(1).from().x(), NEAR);
        assertEquals(600, SamePipe.common(whole, others), NEAR);
    }

    /** The half circle against a quarter of it: the other quarter is left, from 90 to 180 degrees. */
    @Test
    void bendsByTheirAngles() {
        List<Element> off = SamePipe.parts(bend(180), List.of(bend(90)), false);
        assertEquals(1, off.size());
        Element.Bend left = (Element.Bend) off.get(0);
        assertEquals(90, left.turn(), NEAR);
        assertEquals(0, left.from().distance(new Point(0, 75)), NEAR);
        assertEquals(0, left.to().distance(new Point(-75, 0)), NEAR);
        assertEquals(75 * Math.PI / 2, SamePipe.common(bend(180), List.of(bend(90))), NEAR);
    }

    /** The other way round, clockwise, from west to east by the north: what stays is the end of it. */
    @Test
    void bendsGoneTheOtherWay() {
        Element.Bend back = new Element.Bend(new Point(-75, 0), new Point(75, 0), new Point(0, 0), 75, -180);
        Element.Bend on =
                (Element.Bend) SamePipe.parts(back, List.of(bend(90)), true).get(0);
        assertEquals(-90, on.turn(), NEAR);
        assertEquals(0, on.from().distance(new Point(0, 75)), NEAR);
        assertEquals(0, on.to().distance(new Point(75, 0)), NEAR);
    }

    @Test
    void nothingInCommon() {
        Element.Run across = run(500, -100, 500, 100);
        assertTrue(SamePipe.parts(across, List.of(run(0, 0, 1000, 0), bend(180)), true)
                .isEmpty());
        assertEquals(
                1, SamePipe.parts(across, List.of(run(0, 0, 1000, 0)), false).size());
    }
}
