package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopPathVerifier;

class KeyholeTest {
    /**
     * Worked by hand at 150 mm and R = 80: a = 75, so it swings out 5 mm; h = sqrt(160^2 - 155^2) = sqrt(1575) = 39.686,
     * so it takes 119.686 mm of each leg; cos t = 155 / 160, t = 14.3615 degrees; the main arc turns 208.723 degrees.
     */
    @Test
    void at150AndRadius80() {
        Keyhole k = new Keyhole(new Point(0, 0), new Point(0, 150), new Point(-1, 0), 80);
        assertEquals(119.686, k.depth(), 0.0005);
        assertEquals(14.3615, k.outward(), 0.0001);
        List<Element.Bend> arcs = k.arcs();
        assertEquals(208.723, arcs.get(1).turn(), 0.001);
        assertEquals(180, arcs.stream().mapToDouble(Element.Bend::turn).sum(), 1e-9);
        assertEquals(new Point(-119.68626966596887, 0), arcs.get(0).from());
        assertEquals(-80, arcs.get(1).centre().x(), 1e-9);
        assertEquals(75, arcs.get(1).centre().y(), 1e-9);
    }

    /** Either hand and any direction: tangent joints and right ends, by the rules that hold whole loops. */
    @ParameterizedTest
    @CsvSource({"1, 0", "-1, 0", "0, 1", "0, -1", "0.6, 0.8"})
    void isTangentEitherWay(double x, double y) {
        for (int hand : new int[] {1, -1}) {
            for (double radius : new double[] {75, 76, 80, 82.5, 100, 150}) {
                Point first = new Point(1000, 1000);
                Point second = new Point(1000 - hand * 150 * y, 1000 + hand * 150 * x);
                List<Point> path = List.of(
                        new Point(1000 - 500 * x, 1000 - 500 * y),
                        first,
                        second,
                        new Point(second.x() - 500 * x, second.y() - 500 * y));
                Breakdown laid = new Filleting().breakDown(path, radius);
                assertEquals(radius == 75 ? 3 : 5, laid.elements().size());
                List<Finding> faults = new LoopPathVerifier(
                                List.of(new Point(0, 0), new Point(2000, 0), new Point(2000, 2000), new Point(0, 2000)),
                                75,
                                List.<KeepOut>of(),
                                150,
                                path.get(0),
                                330,
                                radius)
                        .verify(List.of(laid));
                assertEquals(List.of(), faults, "radius " + radius);
                double furthest = laid.elements().stream()
                        .mapToDouble(e -> (e.to().x() - 1000) * x + (e.to().y() - 1000) * y)
                        .max()
                        .orElseThrow();
                assertTrue(furthest <= 1e-9, "no further than the corner");
            }
        }
    }

    /** Half a spacing is a plain return bend: no swing, no outer arcs, 75 mm of each leg. */
    @Test
    void aHalfCircleIsTheLimit() {
        Keyhole k = new Keyhole(new Point(0, 0), new Point(150, 0), new Point(0, 1), 75);
        assertEquals(0, k.outward(), 1e-6);
        assertEquals(75, k.depth(), 1e-9);
        assertThrows(
                IllegalArgumentException.class,
                () -> new Keyhole(new Point(0, 0), new Point(150, 0), new Point(0, 1), 151));
    }

    /** Two of them side by side keep 4 a - 2 R >= 0.9 x 2 a: R <= 1.1 a = 82.5 mm at 150. */
    @Test
    void sideBySide() {
        assertTrue(Keyhole.fitsBeside(150, 82.5));
        assertFalse(Keyhole.fitsBeside(150, 82.6));
    }
}
