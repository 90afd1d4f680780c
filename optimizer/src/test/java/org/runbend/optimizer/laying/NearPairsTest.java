package org.runbend.optimizer.laying;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopPathVerifier;

/** One place, one finding. */
class NearPairsTest {
    private static Finding near(int a, int b, double apart) {
        return new Finding(
                "%s and %s: come within %.2f mm, %.2f mm asked%s",
                List.of(new Finding.Place(0, a), new Finding.Place(0, b), apart, 135.0, new Finding.Spot(1, 2)));
    }

    @Test
    void neighboursAlongThePipeAreOnePlace() {
        Finding edge = new Finding(
                "%s: comes within %.2f mm of the outline, %.2f mm asked%s",
                List.of(new Finding.Place(0, 4), 20.0, 75.0, new Finding.Spot(1, 2)));
        Finding nearest = near(4, 9, 70);
        Finding far = near(4, 30, 100);
        assertEquals(
                List.of(edge, nearest, far),
                NearPairs.thinned(List.of(edge, near(3, 9, 80), nearest, near(10, 5, 90), far)));
    }

    /** Two runs 70 mm apart over their length, and a bend between them no farther away: the runs are what is told. */
    @Test
    void runsSayMoreThanBends() {
        List<Finding> found = new LoopPathVerifier(
                        List.of(
                                new Point(-500, -500),
                                new Point(2000, -500),
                                new Point(2000, 2000),
                                new Point(-500, 2000)),
                        0,
                        List.of(),
                        150,
                        new Point(0, 0),
                        330,
                        30)
                .verify(List.of(new Breakdown(List.of(
                        new Element.Run(new Point(0, 0), new Point(900, 0)),
                        new Element.Bend(new Point(900, 0), new Point(900, 70), new Point(900, 35), 35, 180),
                        new Element.Run(new Point(900, 70), new Point(0, 70))))));
        List<Finding> told = NearPairs.thinned(found).stream()
                .filter(f -> f.places().size() == 2)
                .toList();
        assertEquals(1, told.size(), found::toString);
        assertEquals(70, told.get(0).numbers().get(0), 1e-9);
        assertEquals(145.5, told.get(0).numbers().get(1), 1e-9);
        assertEquals(
                "here and here: parallel runs lie 70.00 mm apart, 145.50 mm asked",
                told.get(0).words(p -> "here").replaceAll(", at .*", ""));
    }
}
