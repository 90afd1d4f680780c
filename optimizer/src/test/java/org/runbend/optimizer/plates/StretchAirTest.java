package org.runbend.optimizer.plates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Plates keep the air that is asked from things of every size, worked out from the circle and the body's straight rim. */
class StretchAirTest {
    private static final List<Breakdown> ROW = Rows.of(2000);
    /** A single plate is 120 wide, so over the row at y = 100 its rim lies at 160. */
    private static final double RIM = 160;

    private static List<PlateStretch> stretches(Shape thing, double clearance) {
        Job.FloorPlan bare = Rows.floor();
        Job.FloorPlan floor = new Job.FloorPlan(
                bare.outline(),
                List.of(),
                List.of(new KeepOut("thing", KeepOut.Kind.BOLT, thing, 60)),
                List.of(),
                bare.port());
        Job.PlateRequest request = new Job.PlateRequest(
                List.of(Rows.plate(1, 1200, 300, 3, 10)),
                Job.Share.of(0.85),
                new Job.Gaps(0, 5, clearance),
                Job.Pieces.from(150));
        return new StretchFinder(floor, request, 120, List.of()).find(ROW);
    }

    /** A bolt given as a point in the middle of a plate, whatever the clearance. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, 1, 2, 5})
    void noPlateOverABolt(double clearance) {
        for (double y : new double[] {100, 120, 159}) {
            List<PlateStretch> found = stretches(new Shape.Spot(new Point(1000, y), 0.5), clearance);
            assertEquals(2, found.size(), clearance + " at " + y);
            assertTrue(found.get(0).to() <= 900 - clearance, "runs begin at x = 100");
        }
    }

    /** Rims of circles that reach into a plate by some tenths: an area of 25 mm2 hides up to 2 mm of them. */
    @ParameterizedTest
    @ValueSource(doubles = {8, 15, 40, 60, 200})
    void circlesKeepTheirAir(double radius) {
        for (double clearance : new double[] {0, 2, 5, 20}) {
            for (double deep : new double[] {-1, 0, 0.05, 0.2, 0.5, 1, 1.6}) {
                Shape circle = new Shape.Circle(new Point(1000, RIM + radius + clearance - deep), radius);
                int parts = stretches(circle, clearance).size();
                assertEquals(deep > 0.1 ? 2 : 1, parts, radius + ", " + clearance + ", " + deep);
            }
        }
    }

    /** A box whose side runs along the rim a plate clearance off it blocks nothing; turned rows add noise of doubles alone. */
    @Test
    void boxesBesideTheRim() {
        for (double off : new double[] {5, 5.01, 4.95}) {
            Shape box = new Shape.Polygon(List.of(
                    new Point(900, RIM + off), new Point(1100, RIM + off), new Point(1100, 400), new Point(900, 400)));
            assertEquals(1, stretches(box, 5).size());
        }
    }

    /** Beside a bend the clearance is left free, at an end of the loop nothing is: 1000 - 100 mm each, and 1000 - 2 x 100 between. */
    @Test
    void bendsAreKeptClear() {
        Job.PlateRequest request = new Job.PlateRequest(
                List.of(Rows.plate(1, 1200, 300, 3, 10)),
                Job.Share.of(0.85),
                new Job.Gaps(100, 5, 5),
                Job.Pieces.from(800));
        Breakdown loop = new Breakdown(List.of(
                new Element.Run(new Point(500, 500), new Point(1500, 500)),
                new Element.Bend(new Point(1500, 500), new Point(1500, 800), new Point(1500, 650), 150, 180),
                new Element.Run(new Point(1500, 800), new Point(500, 800)),
                new Element.Bend(new Point(500, 800), new Point(500, 1100), new Point(500, 950), 150, -180),
                new Element.Run(new Point(500, 1100), new Point(1499, 1100))));
        List<PlateStretch> found =
                new StretchFinder(Rows.floor(), request, 120, List.of()).find(List.of(loop, ROW.get(0)));
        assertEquals(
                List.of("0.0: 0.0 to 900.0", "0.2: 100.0 to 900.0", "0.4: 100.0 to 999.0", "1.0: 0.0 to 2000.0"),
                found.stream()
                        .map(s -> s.loop() + "." + s.element() + ": " + Math.round(10 * s.from()) / 10.0 + " to "
                                + Math.round(10 * s.to()) / 10.0)
                        .toList());
    }
}
