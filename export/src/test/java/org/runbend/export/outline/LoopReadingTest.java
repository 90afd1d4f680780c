package org.runbend.export.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.export.dxf.read.Snippets;

/** Layers with a loop of a few lines and arcs; worked by hand. */
class LoopReadingTest {
    private static final String MM = "9|$INSUNITS|70|4";
    private static final List<String> PARTS = List.of(
            line(80, 100, 1000, 100),
            arc(1000, 175, 75, -90, 90),
            line(1000, 250, 300, 250),
            arc(300, 325, 75, 90, 270),
            line(300, 400, 1000, 400));

    private static String line(double x1, double y1, double x2, double y2) {
        return "0|LINE|8|LOOP|10|" + x1 + "|20|" + y1 + "|11|" + x2 + "|21|" + y2;
    }

    private static String arc(double x, double y, double r, double from, double to) {
        return "0|ARC|8|LOOP|10|" + x + "|20|" + y + "|40|" + r + "|50|" + from + "|51|" + to;
    }

    private static DrawnLine read(String header, String entities, DrawingUnit unit) {
        String text = Snippets.drawing(header, "0|LAYER|2|OFF|70|1|62|3", "", entities);
        return read(text.getBytes(StandardCharsets.UTF_8), unit);
    }

    private static DrawnLine read(byte[] data, DrawingUnit unit) {
        Optional<DrawingUnit> request = Optional.ofNullable(unit);
        return LoopReading.read(new DxfReader().read(data, request), "Loop", request);
    }

    private static DrawnLine read(String entities) {
        return read(MM, entities, null);
    }

    /** A half circle has bulge 1, anticlockwise positive. */
    @ParameterizedTest
    @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7})
    void partsInAnyOrderAndDirectionAreOneLine(long seed) {
        Random random = new Random(seed);
        List<String> rest = new ArrayList<>(PARTS.subList(1, 5));
        rest.add(random.nextBoolean() ? line(1000, 250, 300, 250) : line(300, 250, 1000, 250));
        rest.add("0|LINE|8|WALL|10|0|20|0|11|5000|21|0");
        Collections.shuffle(rest, random);
        DrawnLine line = read(PARTS.get(0) + "|" + String.join("|", rest));
        List<Vertex> wanted = List.of(
                new Vertex(80, 100, 0),
                new Vertex(1000, 100, 1),
                new Vertex(1000, 250, 0),
                new Vertex(300, 250, -1),
                new Vertex(300, 400, 0),
                new Vertex(1000, 400, 0));
        assertEquals(wanted.size(), line.vertices().size());
        for (int i = 0; i < wanted.size(); i++) {
            assertEquals(
                    0, wanted.get(i).point().distance(line.vertices().get(i).point()), 1e-9);
            assertEquals(wanted.get(i).bulge(), line.vertices().get(i).bulge(), 1e-9);
        }
        assertEquals(List.of("1 of 6 parts of the loop were drawn twice"), line.remarks());
    }

    /** The same bends as twelve chords, which is how some programs write arcs, and as a rational spline. */
    @Test
    void bendsOfChordsAreArcsAndThatIsSaid() {
        StringBuilder chords = new StringBuilder("0|LWPOLYLINE|8|LOOP|70|0|10|80|20|100");
        for (int i = 0; i <= 12; i++) {
            double t = Math.toRadians(-90 + 15 * i);
            chords.append("|10|" + (1000 + 75 * Math.cos(t)) + "|20|" + (175 + 75 * Math.sin(t)));
        }
        DrawnLine line = read(chords + "|10|300|20|250");
        assertEquals(4, line.vertices().size());
        assertEquals(1, line.vertices().get(1).bulge(), 1e-9);
        assertEquals(1, line.remarks().size());
        assertEquals(
                "bends of the drawn loop: 12 chords were taken for the arc that they stand for (up to 0.642 mm off), near"
                        + " [1000, 100]",
                line.remarks().get(0));
        double h = Math.sqrt(0.5);
        String quarter = "0|SPLINE|8|LOOP|70|4|71|2|40|0|40|0|40|0|40|1|40|1|40|1|41|1|41|" + h + "|41|1"
                + "|10|1000|20|100|10|1075|20|100|10|1075|20|175";
        DrawnLine spline = read(line(80, 100, 1000, 100) + "|" + quarter + "|" + line(1075, 175, 1075, 900));
        assertEquals(Math.tan(Math.PI / 8), spline.vertices().get(1).bulge(), 1e-6);
    }

    /** Points on straight ways go, gaps up to half a millimetre are closed and said, words are said. */
    @Test
    void oddButRight() {
        DrawnLine line = read(line(0, 0, 500, 0) + "|" + line(500.3, 0, 700, 0.004) + "|" + line(700, 0.004, 1000, 0)
                + "|0|LWPOLYLINE|8|LOOP|90|2|70|0|10|1000|20|0|10|1000|20|400|0|TEXT|8|LOOP|10|1|20|2|40|5|1|flow");
        assertEquals(3, line.vertices().size());
        assertEquals(
                List.of(
                        "layer Loop of the drawing also holds words (1), which are no part of the loop",
                        "a gap of 0.3 mm in the drawn loop was closed at [500, 0]"),
                line.remarks());
        assertEquals(
                25.4 * 1000,
                read("", line(0, 0, 1000, 0), DrawingUnit.IN).vertices().get(1).x(),
                1e-9);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '#', quoteCharacter = '`', textBlock = """
            0|LINE|8|WALL|10|0|20|0|11|5|21|0|0|POINT|8|B|10|0|20|0 # nothing visible is on layer Loop; there are B, WALL
            0|LINE|8|OFF|10|0|20|0|11|5|21|0 # nothing visible is on layer Loop; nothing visible is drawn in model space
            0|LWPOLYLINE|8|LOOP|90|3|70|1|10|0|20|0|10|900|20|0|10|900|20|900 # the line on layer Loop is closed, it goes through [0, 0]; a loop begins and ends at the port, so open it there
            0|LINE|8|LOOP|10|0|20|0|11|9|21|0|0|LINE|8|LOOP|10|9|20|0|11|9|21|9|0|LINE|8|LOOP|10|9|20|9|11|0|21|0 # the line on layer Loop is closed, it goes through [0, 0]; a loop begins and ends at the port, so open it there
            0|LINE|8|LOOP|10|0|20|0|11|9|21|0|0|LINE|8|LOOP|10|9|20|0|11|9|21|9|0|LINE|8|LOOP|10|9|20|0|11|20|21|0 # more than two lines of layer Loop meet at [9, 0]; a loop does not branch
            0|LINE|8|LOOP|10|0|20|0|11|500|21|0|0|LINE|8|LOOP|10|502.5|20|0|11|900|21|0 # layer Loop has 2 lines that do not meet, a loop is one: [0, 0] to [500, 0], [502.5, 0] to [900, 0]; the nearest ends are 2.5 mm apart, at [500, 0] and [502.5, 0]
            0|CIRCLE|8|LOOP|10|40|20|50|40|6 # layer Loop has a circle at [40, 50]; keep anything but the loop on another layer
            0|TEXT|8|LOOP|10|1|20|2|40|5|1|flow # layer Loop holds words or points only, no line
            0|ELLIPSE|8|LOOP|10|5|20|5|11|80|21|10|40|0.5|41|0|42|3 # layer Loop has a curve that is no arc (ellipse); draw the loop of lines and arcs
            """)
    void refusedInOneLine(String entities, String line) {
        String given = entities.strip();
        assertEquals(line.strip(), assertThrows(NoLoop.class, () -> read(given)).getMessage());
    }

    @Test
    void aDrawingWithoutUnitNeedsOne() {
        assertEquals(
                "the drawing names no unit, and what is on layer Loop measures 3000 x 2000; units: mm makes it 3.00 x 2.00 m",
                assertThrows(NoLoop.class, () -> read("", line(0, 0, 3000, 0) + "|" + line(3000, 0, 3000, 2000), null))
                        .getMessage());
        String off = Snippets.drawing(MM, "0|LAYER|2|LOOP|70|1|62|3", "", line(0, 0, 9, 0));
        assertEquals(
                "layer Loop is frozen or off",
                assertThrows(NoLoop.class, () -> read(off.getBytes(StandardCharsets.UTF_8), null))
                        .getMessage());
    }
}
