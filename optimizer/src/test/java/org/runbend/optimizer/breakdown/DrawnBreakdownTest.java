package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.runbend.optimizer.plan.SoundKit.points;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Point;

/** Lines and arcs as drawn; worked by hand. */
class DrawnBreakdownTest {
    private static List<Element> elements(DrawnLoop loop) {
        return new DrawnBreakdown(75, 150).of(loop).elements();
    }

    /** A half circle has bulge 1 and its centre half way; its two quarters, of bulge tan(22.5 degrees), are the same bend. */
    @Test
    void arcsStayAsTheyAre() {
        double quarter = Math.tan(Math.PI / 8);
        List<Element> half = elements(new DrawnLoop(points(0, 0, 500, 0, 500, 200, 0, 200), List.of(0.0, 1.0, 0.0)));
        List<Element> quarters = elements(
                new DrawnLoop(points(0, 0, 500, 0, 600, 100, 500, 200, 0, 200), List.of(0.0, quarter, quarter, 0.0)));
        for (List<Element> made : List.of(half, quarters)) {
            assertEquals(3, made.size());
            Element.Bend bend = (Element.Bend) made.get(1);
            assertEquals(100, bend.radius(), 1e-9);
            assertEquals(180, bend.turn());
            assertEquals(0, bend.centre().distance(new Point(500, 100)), 1e-9);
            assertEquals(1000 + Math.PI * 100, new Breakdown(made).floorLength(), 1e-9);
        }
        Element.Bend clockwise = (Element.Bend)
                elements(new DrawnLoop(points(0, 0, 0, -150), List.of(-1.0))).get(0);
        assertEquals(-180, clockwise.turn());
        assertEquals(75, clockwise.radius(), 1e-9);
    }

    /** Sharp corners between arcs are rounded as those of points are. */
    @Test
    void cornersBesideArcsAreRounded() {
        List<Element> made = elements(
                new DrawnLoop(points(0, 0, 500, 0, 500, 400, 350, 400, 350, 100), List.of(0.0, 0.0, 1.0, 0.0)));
        assertEquals(5, made.size());
        assertEquals(new Element.Run(new Point(0, 0), new Point(425, 0)), made.get(0));
        assertEquals(75, ((Element.Bend) made.get(1)).radius());
        assertEquals(325, made.get(2).length(), 1e-9);
        assertEquals(180, ((Element.Bend) made.get(3)).turn());
        List<Element> byPoints = elements(DrawnLoop.ofPoints(points(0, 0, 500, 0, 500, 400)));
        assertEquals(made.subList(0, 2), byPoints.subList(0, 2));
    }

    /** A keyhole goes round more than half a circle: three quarters, drawn in one or in three arcs, are one bend. */
    @Test
    void arcsOfOneCircleAreOneBend() {
        double third = Math.tan(Math.PI / 8);
        List<Element> made = elements(
                new DrawnLoop(points(0, -60, 60, 0, 0, 60, -60, 0, -60, -200), List.of(third, third, third, 0.0)));
        assertEquals(2, made.size());
        assertEquals(270, ((Element.Bend) made.get(0)).turn());
        assertEquals(1.5 * Math.PI * 60, made.get(0).length(), 1e-9);
        assertTrue(made.get(1) instanceof Element.Run);
    }
}
