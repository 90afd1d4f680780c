package org.runbend.optimizer.floor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.floor.Distance.Arc;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Distances and free space against triangles worked by hand. */
class FreeSpaceTest {
    private static final double HALF_TURN = Math.PI;

    private static final List<Point> HALL =
            List.of(new Point(-500, -500), new Point(500, -500), new Point(500, 500), new Point(-500, 500));

    /** Corner at 0, 0 with legs to the right and up, laid at R75: the arc's centre is 75, 75. */
    private static final Arc CORNER = new Arc(75, 75, 75, Math.PI, Math.PI / 2);

    @ParameterizedTest
    @CsvSource({
        // Segment from 0,0 to 8,0: foot inside, foot beyond each end (3-4-5 triangles), on it.
        "5, 3, 3",
        "-3, 4, 5",
        "11, -4, 5",
        "8, 0, 0"
    })
    void pointToSegment(double x, double y, double distance) {
        assertEquals(distance, Distance.pointSegment(x, y, 0, 0, 8, 0), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        // Against 0,0 to 8,0: crossing, parallel 2 above, end over the inside, ends apart by 3 and 4, a mere point.
        "4, -1, 4, 1, 0",
        "2, 2, 6, 2, 2",
        "4, 7, 5, 1.5, 1.5",
        "11, 4, 20, 9, 5",
        "4, 6, 4, 6, 6"
    })
    void segmentToSegment(double ax, double ay, double bx, double by, double distance) {
        assertEquals(distance, Distance.segmentSegment(0, 0, 8, 0, ax, ay, bx, by), 1e-12);
        assertEquals(distance, Distance.segmentSegment(bx, by, ax, ay, 0, 0, 8, 0), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        // Upper half of the circle of radius 50 round 0,0: outside, inside, the centre, below (nearest are its ends).
        "0, 80, 30",
        "30, 40, 0",
        "0, 20, 30",
        "0, 0, 50",
        "50, -12, 12",
        "80, -40, 50"
    })
    void pointToArc(double x, double y, double distance) {
        assertEquals(distance, Distance.pointArc(x, y, new Arc(0, 0, 50, 0, HALF_TURN)), 1e-12);
        assertEquals(distance, Distance.pointArc(x, y, new Arc(0, 0, 50, HALF_TURN, -HALF_TURN)), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        // The same half circle: a line above it, a chord through it, a chord of the half that is not there
        // (end 50,0 is 20 above the line), a line whose foot faces the missing half, one wholly inside, one beside it.
        "-100, 70, 100, 70, 20",
        "-100, 30, 100, 30, 0",
        "-100, -20, 100, -20, 20",
        "-100, -90, 100, -90, 90",
        "-10, 20, 10, 20, 27.639320225002102",
        "80, 40, 120, 40, 39.44271909999159"
    })
    void segmentToArc(double ax, double ay, double bx, double by, double distance) {
        // Fifth: ends 10,20 are sqrt(500) = 22.3607 from the centre, 50 - 22.3607 = 27.6393.
        // Sixth: 80,40 is sqrt(8000) = 89.4427 from the centre, less 50.
        assertEquals(distance, Distance.segmentArc(ax, ay, bx, by, new Arc(0, 0, 50, 0, HALF_TURN)), 1e-9);
        assertEquals(distance, Distance.segmentArc(bx, by, ax, ay, new Arc(0, 0, 50, HALF_TURN, -HALF_TURN)), 1e-9);
    }

    /**
     * A bolt 45 mm inside a corner along both legs: sqrt(2) x 45 = 63.6 mm from the node, but from the arc's centre it is
     * sqrt(2) x (75 - 45) = 42.4 mm, so 75 - 42.4 = 32.6 mm from the arc.
     */
    @Test
    void boltInsideACornerIsNearerToTheArcThanToTheNode() {
        assertEquals(32.574, Distance.pointArc(45, 45, CORNER), 0.001);
        KeepOut bolt = new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(45, 45), 0), 40);
        FreeSpace free = new FreeSpace(HALL, 75, List.of(bolt));
        assertTrue(free.allowsPoint(0, 0), "node, 63.6 mm off");
        assertTrue(free.allowsSegment(0, 0, 150, 0), "leg, 45 mm off");
        assertTrue(free.allowsSegment(0, 0, 0, 150), "leg, 45 mm off");
        assertFalse(free.allowsArc(75, 75, 75, Math.PI, Math.PI / 2), "arc, 32.6 mm off");
    }

    @ParameterizedTest
    @CsvSource({"32.57, true", "32.58, false"})
    void clearanceDecidesAtTheArcToAHundredth(double clearance, boolean allowed) {
        KeepOut bolt = new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(45, 45), 0), clearance);
        FreeSpace free = new FreeSpace(HALL, 75, List.of(bolt));
        assertEquals(allowed, free.allowsArc(75, 75, 75, Math.PI, Math.PI / 2));
    }

    /**
     * The outline juts in with its corner at 0, 0; the pipe passes 75 mm off both sides, corner at -75, -75. At R75 the
     * arc's centre is the outline's corner: 75 mm all along. At R110 its centre is 35, 35, so it passes
     * 110 - sqrt(2) x 35 = 60.5 mm off.
     */
    @Test
    void widerBendCutsAReentrantCorner() {
        List<Point> ell = List.of(
                new Point(-500, -500),
                new Point(500, -500),
                new Point(500, 0),
                new Point(0, 0),
                new Point(0, 500),
                new Point(-500, 500));
        FreeSpace free = new FreeSpace(ell, 75, List.of());
        assertTrue(free.allowsArc(0, 0, 75, Math.PI, Math.PI / 2));
        assertFalse(free.allowsArc(35, 35, 110, Math.PI, Math.PI / 2));
        assertTrue(new FreeSpace(ell, 60.5, List.of()).allowsArc(35, 35, 110, Math.PI, Math.PI / 2));
        assertFalse(new FreeSpace(ell, 60.51, List.of()).allowsArc(35, 35, 110, Math.PI, Math.PI / 2));
    }

    /** A post narrower than a link, with no clearance: both ends lie outside, what lies between them crosses it. */
    @Test
    void aPolygonWithoutClearanceIsNotCrossed() {
        List<Point> corners = List.of(new Point(20, -20), new Point(130, -20), new Point(130, 20), new Point(20, 20));
        KeepOut post = new KeepOut("post", KeepOut.Kind.PILLAR, new Shape.Polygon(corners), 0);
        FreeSpace free = new FreeSpace(HALL, 75, List.of(post));
        assertTrue(free.allowsPoint(0, 0) && free.allowsPoint(150, 0));
        assertFalse(free.allowsSegment(0, 0, 150, 0));
        assertTrue(free.allowsSegment(0, 21, 150, 21));
        assertFalse(free.allowsArc(75, 75, 75, Math.PI, Math.PI / 2), "its lowest point, 75, 0, lies in the post");
    }

    @Test
    void circlesAndPolygonsAreKeptOffByTheirRims() {
        KeepOut drain = new KeepOut("d", KeepOut.Kind.DRAIN, new Shape.Circle(new Point(0, 0), 60), 40);
        KeepOut post = new KeepOut(
                "p",
                KeepOut.Kind.PILLAR,
                new Shape.Polygon(
                        List.of(new Point(200, 0), new Point(260, 0), new Point(260, 60), new Point(200, 60))),
                30);
        FreeSpace free = new FreeSpace(HALL, 75, List.of(drain, post));
        assertTrue(free.allowsPoint(0, 100), "60 + 40");
        assertFalse(free.allowsPoint(0, 99.9), "60 + 40");
        assertTrue(free.allowsPoint(230, 90), "60 + 30");
        assertFalse(free.allowsPoint(230, 89.9), "60 + 30");
        assertFalse(free.allowsPoint(230, 30), "inside the post, 30 from its nearest side");
        assertTrue(free.allowsPoint(425, 425), "edge met exactly");
        assertFalse(free.allowsPoint(425.1, 0), "edge");
        assertFalse(free.allowsPoint(600, 0), "100 outside the floor");
    }

    @ParameterizedTest
    @CsvSource({
        // Rectangles that the spacing divides hold (length / spacing) x (width / spacing) nodes at an edge of half a
        // spacing; 15 x 9 would be found on a plain 10 mm raster of offsets in the first.
        "2400, 1500, 150, 160",
        "1200, 900, 150, 48",
        "300, 300, 150, 4",
        "1000, 700, 100, 70",
        // 26.67 x 4: the whole part counts.
        "4000, 600, 150, 104"
    })
    void exactFitsAreFound(double length, double width, double spacing, int nodes) {
        List<Point> outline =
                List.of(new Point(0, 0), new Point(length, 0), new Point(length, width), new Point(0, width));
        FloorProblem problem = new FloorProblem(
                outline,
                List.of(),
                List.of(),
                new Point(0, width / 2),
                2.2 * spacing,
                spacing,
                spacing / 2,
                spacing / 2,
                0,
                10);
        List<Lattice> best = new LatticeSearch().best(problem, 4);
        assertEquals(nodes, best.get(0).reachable());
        assertEquals(nodes, best.get(0).graph().size());
    }
}
