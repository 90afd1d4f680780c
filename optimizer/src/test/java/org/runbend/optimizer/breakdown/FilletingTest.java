package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Point;

/** Small loops measured by hand. */
class FilletingTest {
    private static final double TENTH = 0.1;

    private static Breakdown laid(double radius, double... xy) {
        List<Point> path = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            path.add(new Point(xy[i], xy[i + 1]));
        }
        return new Filleting().breakDown(path, radius);
    }

    /**
     * Four nodes at 150: up, right, down. Each run is 150 - 75 = 75; the two corners meet in a return bend of half a
     * circle, pi x 75 = 235.6. In all 75 + 235.6 + 75 = 385.6, which is also 150 x 3 - 0.2146 x 150 x 2.
     */
    @Test
    void twoByTwo() {
        Breakdown b = laid(75, 0, 0, 0, 150, 150, 150, 150, 0);
        assertEquals(3, b.elements().size());
        Element.Bend bend = assertInstanceOf(Element.Bend.class, b.elements().get(1));
        assertEquals(-180, bend.turn(), 1e-9);
        assertEquals(235.6, bend.length(), TENTH / 2);
        assertEquals(0, bend.centre().distance(new Point(75, 75)), 1e-9);
        assertEquals(75, b.elements().get(0).length(), 1e-9);
        assertEquals(385.6, b.floorLength(), TENTH / 2);
        assertEquals(150 * 3 - 0.2146 * 150 * 2, b.floorLength(), TENTH);
        assertEquals(2, b.quarterBends());
        assertEquals(1, b.returnBends());
    }

    /**
     * Six nodes at 150, round the rim: 75 + 117.8 (quarter of 2 pi x 75) + 150 + 235.6 + 75 = 653.4, which is also
     * 150 x 5 - 0.2146 x 150 x 3. The node in the middle of the long side does not part its run.
     */
    @Test
    void twoByThree() {
        Breakdown b = laid(75, 0, 300, 150, 300, 150, 150, 150, 0, 0, 0, 0, 150);
        assertEquals(
                List.of("run 75.0", "bend 117.8", "run 150.0", "bend 235.6", "run 75.0"),
                b.elements().stream().map(FilletingTest::told).toList());
        assertEquals(653.4, b.floorLength(), TENTH / 2);
        assertEquals(150 * 5 - 0.2146 * 150 * 3, b.floorLength(), TENTH);
        assertEquals(300, b.straightLength(), 1e-9);
        assertEquals(3, b.quarterBends());
        assertEquals(1, b.returnBends());
    }

    /** Left, then right: two quarter bends that meet but have opposite hands stay two. */
    @Test
    void oppositeHandsAreNoReturnBend() {
        Breakdown b = laid(75, 0, 0, 150, 0, 150, 150, 300, 150);
        assertEquals(
                List.of("run 75.0", "bend 117.8", "bend 117.8", "run 75.0"),
                b.elements().stream().map(FilletingTest::told).toList());
        assertEquals(0, b.returnBends());
        assertEquals(2, b.quarterBends());
    }

    /** R55 in a return of 150: a straight of 150 - 2 x 55 = 40 is left between the corners, so it is two bends. */
    @Test
    void tighterRadiusLeavesAStraightBetween() {
        Breakdown b = laid(55, 0, 0, 0, 150, 150, 150, 150, 0);
        // A quarter of 2 pi x 55 = 86.4.
        assertEquals(
                List.of("run 95.0", "bend 86.4", "run 40.0", "bend 86.4", "run 95.0"),
                b.elements().stream().map(FilletingTest::told).toList());
        assertEquals(0, b.returnBends());
    }

    /** A turn by 60 degrees takes 75 x tan 30 = 43.3 of each leg and is pi / 3 x 75 = 78.5 long. */
    @Test
    void slopedCorner() {
        Breakdown b = laid(75, 0, 0, 200, 0, 300, 100 * Math.sqrt(3));
        assertEquals(
                List.of("run 156.7", "bend 78.5", "run 156.7"),
                b.elements().stream().map(FilletingTest::told).toList());
        assertEquals(60, ((Element.Bend) b.elements().get(1)).turn(), 1e-9);
    }

    @Test
    void legsTooShortForTheirBendsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> laid(80, 0, 0, 0, 100, 150, 100, 150, 0));
    }

    private static String told(Element e) {
        String kind = e instanceof Element.Run ? "run" : "bend";
        return String.format(Locale.ROOT, "%s %.1f", kind, e.length());
    }
}
