package org.runbend.export.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawingTest {
    /** Unit circle by hand: a quarter turn from (1, 0) to (0, 1) has its centre at 0 and bulge tan 22.5 = sqrt 2 - 1. */
    @Test
    void arcFromBulge() {
        Arc arc = Arc.between(new Point(1, 0), new Point(0, 1), Math.sqrt(2) - 1);
        assertEquals(0, arc.centre().distance(new Point(0, 0)), 1e-12);
        assertEquals(1, arc.radius(), 1e-12);
        assertEquals(0, arc.startAngle(), 1e-9);
        assertEquals(90, arc.sweep(), 1e-9);
        assertEquals(Math.PI / 2, arc.length(), 1e-12);
    }

    /** The same ends the other way round: centre (1, 1), from -90 by -90 degrees. */
    @Test
    void clockwiseArcFromBulge() {
        Arc arc = Arc.between(new Point(1, 0), new Point(0, 1), 1 - Math.sqrt(2));
        assertEquals(0, arc.centre().distance(new Point(1, 1)), 1e-12);
        assertEquals(-90, arc.startAngle(), 1e-9);
        assertEquals(-90, arc.sweep(), 1e-9);
    }

    /** Extents against 20000 points on the arc (brute force). */
    @ParameterizedTest
    @CsvSource({"0, 90", "10, 60", "350, 30", "-100, -200", "45, 270", "200, 360", "90, -90", "720, 10"})
    void extentOfArcHoldsItTightly(double start, double sweep) {
        Arc arc = new Arc(new Point(3, -2), 5, start, sweep);
        Extent brute = Stream.iterate(0, i -> i + 1)
                .limit(20001)
                .map(i -> Math.toRadians(start + sweep * i / 20000))
                .map(t -> Extent.at(new Point(3 + 5 * Math.cos(t), -2 + 5 * Math.sin(t))))
                .reduce(Extent::union)
                .orElseThrow();
        Extent extent = arc.extent();
        assertEquals(brute.minX(), extent.minX(), 1e-6);
        assertEquals(brute.minY(), extent.minY(), 1e-6);
        assertEquals(brute.maxX(), extent.maxX(), 1e-6);
        assertEquals(brute.maxY(), extent.maxY(), 1e-6);
    }

    @Test
    void pathDropsDoubleVerticesAndRepeatedStart() {
        Point a = new Point(0, 0);
        Path path = Path.polygon(List.of(a, new Point(1e-7, 0), new Point(10, 0), new Point(10, 10), a));
        assertEquals(3, path.vertices().size());
        assertThrows(IllegalArgumentException.class, () -> Path.polygon(List.of(a, a)));
    }

    /** Hand-worked: (0,0) to (100,0), 20 to the left: the line runs from (0,20) to (100,20), text in the middle above. */
    @Test
    void dimensionLine() {
        Dimension d = Dimension.measured(new Point(0, 0), new Point(100, 0), 20, 5);
        assertEquals(0, d.lineStart().distance(new Point(0, 20)), 1e-9);
        assertEquals(0, d.lineEnd().distance(new Point(100, 20)), 1e-9);
        assertEquals("100", d.text());
        assertEquals(50, d.label().at().x(), 1e-9);
        assertTrue(d.label().at().y() > 20);
    }

    /** Drawings are read from below or from the right (ISO 129-1): the text's angle lies in (-90, 90]. */
    @ParameterizedTest
    @CsvSource({"0, 0", "45, 45", "90, 90", "135, -45", "180, 0", "-90, 90", "-135, 45", "-45, -45"})
    void dimensionTextIsNeverUpsideDown(double direction, double expected) {
        Dimension d = Dimension.measured(new Point(0, 0), new Point(0, 0).polar(500, direction), 20, 5);
        assertEquals(expected, d.label().angle(), 1e-9);
    }

    @Test
    void narrowDimensionPutsTextBeyondItsEnd() {
        Dimension d = Dimension.measured(new Point(0, 0), new Point(10, 0), 20, 5);
        assertTrue(d.textMoved());
        assertTrue(d.label().extent().minX() > 10);
    }

    @ParameterizedTest
    @CsvSource({"0.0000004, 0", "-0.0000004, 0", "1234.5, 1234.5", "1e7, 10000000", "-2.6e-6, -0.000003", "0.1, 0.1"})
    void decimalsArePlain(double value, String expected) {
        assertEquals(expected, Decimals.of(value, 6));
    }
}
