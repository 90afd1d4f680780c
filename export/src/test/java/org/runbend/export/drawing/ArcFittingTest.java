package org.runbend.export.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chords of circles whose centres and radii are known; bulges from the tangent of a quarter of the sweep. */
class ArcFittingTest {
    private static final ArcFitting.Limits LIMITS = new ArcFitting.Limits(0.02, 3, 20, 4, 25, 5);

    @ParameterizedTest
    @CsvSource({"300, 0, 90, 8", "75, 90, -180, 12", "2000, 10, 40, 9", "40, -30, 270, 30"})
    void chordsBetweenStraightLines(double radius, double start, double sweep, int chords) {
        Point centre = new Point(1000, 700);
        List<Vertex> line = new ArrayList<>();
        double ahead = start + Math.signum(sweep) * 90;
        line.add(Vertex.straight(centre.polar(radius, start).polar(-500, ahead)));
        for (int i = 0; i <= chords; i++) {
            line.add(Vertex.straight(centre.polar(radius, start + sweep * i / chords)));
        }
        line.add(
                Vertex.straight(line.get(line.size() - 1).point().polar(500, start + sweep + Math.signum(sweep) * 90)));
        ArcFitting.Fitted found = ArcFitting.fit(line, false, LIMITS);
        assertEquals(1, found.arcs());
        assertEquals(chords, found.chords());
        double swept = 0;
        for (int i = 1; i + 2 < found.vertices().size(); i++) {
            Arc arc = Arc.between(
                    found.vertices().get(i).point(),
                    found.vertices().get(i + 1).point(),
                    found.vertices().get(i).bulge());
            assertEquals(radius, arc.radius(), 1e-6);
            swept += arc.sweep();
        }
        assertEquals(sweep, swept, 1e-9);
        assertEquals(radius * (1 - Math.cos(Math.toRadians(sweep / chords) / 2)), found.off(), 1e-9);
    }

    @Test
    void sidesOfARoomStaySides() {
        List<Vertex> octagon = new ArrayList<>();
        List<Vertex> hull = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            octagon.add(Vertex.straight(new Point(0, 0).polar(1300, 45 * i)));
            hull.add(Vertex.straight(new Point(0, 0).polar(2900, 8 * i)));
        }
        assertEquals(octagon, ArcFitting.fit(octagon, true, LIMITS).vertices());
        assertEquals(hull, ArcFitting.fit(hull, false, LIMITS).vertices());
    }

    @Test
    void sBendsAreTwoArcsAndARingACircle() {
        List<Vertex> line = new ArrayList<>();
        for (int i = 0; i <= 8; i++) {
            line.add(Vertex.straight(new Point(0, 0).polar(100, 180 - 90.0 * i / 8)));
        }
        for (int i = 1; i <= 8; i++) {
            line.add(Vertex.straight(new Point(0, 200).polar(100, -90 + 90.0 * i / 8)));
        }
        ArcFitting.Fitted found = ArcFitting.fit(line, false, LIMITS);
        assertEquals(2, found.arcs());
        double quarter = Math.tan(Math.PI / 8);
        assertEquals(-quarter, found.vertices().get(0).bulge(), 1e-9);
        assertEquals(quarter, found.vertices().get(1).bulge(), 1e-9);
        List<Vertex> ring = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            ring.add(Vertex.straight(new Point(5, 5).polar(30, 15 * i)));
        }
        ArcFitting.Fitted circle = ArcFitting.fit(ring, true, LIMITS);
        assertEquals(
                List.of(1.0, 1.0), circle.vertices().stream().map(Vertex::bulge).toList());
    }
}
