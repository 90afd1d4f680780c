package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.runbend.optimizer.plan.SoundKit.assertFound;
import static org.runbend.optimizer.plan.SoundKit.points;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/**
 * A tooth laid by hand: east along y = 75 from x = 75 to 450, a return bend of radius 75 round (450, 150), back west along
 * y = 225. The groove is 16 mm wide.
 */
class WishVerifierTest {
    private static final Breakdown TOOTH = new Breakdown(List.of(
            new Element.Run(new Point(75, 75), new Point(450, 75)),
            new Element.Bend(new Point(450, 75), new Point(450, 225), new Point(450, 150), 75, 180),
            new Element.Run(new Point(450, 225), new Point(75, 225))));

    private static List<Finding> found(Support support) {
        return new WishVerifier(List.of(support), List.of(), 16).verify(List.of(TOOTH));
    }

    private static List<Finding> found(PipeRule veto) {
        return new WishVerifier(List.of(), List.of(veto), 16).verify(List.of(TOOTH));
    }

    private static Support rib(double x1, double y1, double x2, double y2, Support.Crossing cross) {
        return new Support("rib", new Point(x1, y1), new Point(x2, y2), 40, cross);
    }

    @Test
    void squareCrossingsAreSound() {
        assertEquals(List.of(), found(rib(250, 0, 250, 400, Support.Crossing.SQUARE)));
    }

    @Test
    void neverMeansNever() {
        assertFound(found(rib(250, 0, 250, 400, Support.Crossing.NEVER)), "loop A element 0", "'rib', no pipe may");
    }

    /** atan(20 / 400) = 2.86 degrees. */
    @Test
    void crossingAslant() {
        assertFound(
                found(rib(250, 0, 270, 400, Support.Crossing.SQUARE)), "loop A element 0", "2.86 degrees off", "2.01");
    }

    /** The bend reaches x = 525; a rib of 40 with half a groove of 8 reaches 28 from its middle: 552.9 meets it, 553.1 not. */
    @Test
    void bendOnSupport() {
        assertFound(
                found(rib(552.8, 0, 552.8, 400, Support.Crossing.SQUARE)), "loop A element 1", "bend lies on support");
        assertEquals(List.of(), found(rib(553.1, 0, 553.1, 400, Support.Crossing.SQUARE)));
    }

    @Test
    void runAlongSupport() {
        assertFound(found(rib(100, 90, 300, 90, Support.Crossing.SQUARE)), "loop A element 0", "90.00 degrees off");
    }

    @Test
    void runThatBeginsOnSupport() {
        assertFound(found(rib(75, 0, 75, 120, Support.Crossing.SQUARE)), "loop A element 0", "begins or ends on");
    }

    /** (450, 150) lies 75 mm from every point of the bend; straight pipe may come as near as it likes. */
    @Test
    void noBend() {
        assertEquals(List.of(), found(new PipeRule.NoBend("v", new Point(450, 150), 75)));
        assertFound(
                found(new PipeRule.NoBend("v", new Point(450, 150), 76)),
                "loop A element 1",
                "within 75.00 mm",
                "76.00");
        assertEquals(List.of(), found(new PipeRule.NoBend("v", new Point(200, 75), 200)));
    }

    @Test
    void noPipe() {
        PipeRule strip = new PipeRule.NoPipe("v", new Shape.Polygon(points(100, 60, 200, 60, 200, 90, 100, 90)));
        assertFound(found(strip), "loop A element 0", "99.90 mm of it lie in v");
        assertEquals(
                List.of(),
                found(new PipeRule.NoPipe("v", new Shape.Polygon(points(100, 76, 200, 76, 200, 224, 100, 224)))));
    }

    @Test
    void mustRun() {
        assertEquals(List.of(), found(new PipeRule.MustRun("v", new Point(449, 75), new Point(80, 75.3))));
        assertFound(
                found(new PipeRule.MustRun("v", new Point(80, 75), new Point(460, 75))), "no run covers the line of v");
        assertFound(
                found(new PipeRule.MustRun("v", new Point(80, 76), new Point(400, 76))), "no run covers the line of v");
    }
}
