package org.runbend.optimizer.breakdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.runbend.optimizer.plan.SoundKit.points;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Corners as drawn, rounded at the radius wanted or at what their legs leave. */
class CornerRadiiTest {
    private static List<Double> radii(double wanted, double... xy) {
        return CornerRadii.of(points(xy), wanted).stream()
                .map(r -> Math.rint(1e9 * r) / 1e9)
                .toList();
    }

    /** A right angle takes its radius of each leg; 130 mm between two of them leave 65 each. */
    @Test
    void aLegIsSharedByItsCorners() {
        assertEquals(List.of(65.0, 65.0), radii(75, 0, 0, 500, 0, 500, 130, 0, 130));
        assertEquals(List.of(75.0, 75.0), radii(75, 0, 0, 500, 0, 500, 150, 0, 150));
        assertEquals(List.of(75.0, 75.0), radii(75, 0, 0, 500, 0, 500, 400, 0, 400));
        // 0.4 mm would be left between the halves of a tooth: it is one return bend a fifth of a millimetre wider
        assertEquals(List.of(75.2, 75.2), radii(75, 0, 0, 500, 0, 500, 150.4, 0, 150.4));
    }

    /** The two halves of a tooth of 130 mm are one return bend of radius 65: pi x 65 = 204.2 mm long. */
    @Test
    void aToothIsOneReturnBend() {
        Breakdown tooth = new Filleting().breakDownDrawn(points(0, 0, 500, 0, 500, 130, 0, 130), 75);
        assertEquals(3, tooth.elements().size());
        assertEquals(180, ((Element.Bend) tooth.elements().get(1)).turn(), 1e-9);
        assertEquals(2 * 435 + Math.PI * 65, tooth.floorLength(), 1e-9);
    }

    /**
     * Legs of 100 and 160: the corner between gets min(50, 80) = 50 at first, its other neighbours 50 and 80, at most 75;
     * then it may grow to 160 - 75 - 1 = 84 by the long leg but not by the short one, 100 - 50 - 1 = 49.
     */
    @Test
    void unequalLegs() {
        assertEquals(List.of(50.0, 50.0, 75.0), radii(75, 0, 0, 300, 0, 300, 100, 140, 100, 140, 500));
    }

    /** A turn of 45 degrees takes r tan(22.5 degrees) = 0.4142 r; the right angle of its leg of 90 mm takes r. */
    @Test
    void obliqueCorners() {
        double share = 90 / (1 + Math.tan(Math.PI / 8));
        List<Double> radii = radii(75, 0, 0, 300, 0, 300, 90, 300 + 200 / Math.sqrt(2), 90 + 200 / Math.sqrt(2));
        assertEquals(share, radii.get(0), 1e-9);
        assertEquals(share, radii.get(1), 1e-9);
    }
}
