package org.runbend.export.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.export.dxf.read.Snippets;

/** Drawings of a few lines, with the floor that a person sees in them. */
class FloorReadingTest {
    private static final String MM = "9|$INSUNITS|70|4";
    private static final String FLOOR = rectangle("FLOOR", 0, 0, 3000, 2000);
    private static final OutlineRequest PLAIN = request(null, null);

    @Test
    void largestClosedLineIsTheFloor() {
        FloorSketch s = floor(rectangle("A", 100, 100, 300, 200) + "|" + FLOOR + "|" + circle("B", 1500, 1000, 30));
        assertEquals("FLOOR", s.outline().layer());
        assertEquals(6e6, s.outline().area(), 1e-6);
        assertEquals(2, s.obstacles().size());
        assertEquals(List.of(), s.leftOut());
    }

    /** Lines in any order and direction, one twice, one of no length, corners off by 0.005 mm. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void shuffledLinesAreJoined(long seed) {
        Random random = new Random(seed);
        double[][] corners = {{0, 0}, {3000, 0}, {3000, 900}, {2000, 900}, {2000, 2000}, {0, 2000}};
        List<String> lines = new ArrayList<>(List.of("0|LINE|8|W|10|7|20|7|11|7|21|7"));
        for (int i = 0; i < corners.length; i++) {
            double[] a = corners[i];
            double[] b = corners[(i + 1) % corners.length];
            boolean turned = random.nextBoolean();
            lines.add(line(
                    "W",
                    turned ? b[0] : a[0],
                    turned ? b[1] : a[1],
                    turned ? a[0] : b[0],
                    (turned ? a[1] : b[1]) + 0.005));
        }
        lines.add(lines.get(3));
        Collections.shuffle(lines, random);
        FloorSketch s = floor(String.join("|", lines));
        assertEquals(6e6 - 1000 * 1100, s.outline().area(), 30);
        assertEquals(6, s.outline().path().vertices().size());
        assertEquals(List.of("LINE of no length: 1", "lines drawn twice: 1"), s.leftOut());
        assertEquals(1, s.guesses().size());
    }

    /** Each side too long or too short by up to 0.4 mm at both ends: the corners are where the lines cross. */
    @ParameterizedTest
    @CsvSource({"0.4, 0.4", "-0.4, -0.4", "0.4, -0.4", "-0.45, 0.1", "0.3, 0"})
    void cornersThatWereMissedAreMade(double along, double across) {
        String drawn = String.join(
                "|",
                line("W", -along, 0, 3000 + along, 0),
                line("W", 3000, 2000 + across, 3000, -across),
                line("W", 3000 + along, 2000, -along, 2000),
                line("W", 0, -across, 0, 2000 + across));
        FloorSketch s = floor(drawn);
        assertEquals(6e6, s.outline().area(), 1e-6);
        assertEquals(4, s.outline().path().vertices().size());
        assertEquals(
                List.of("lines that crossed or fell short by up to " + Math.max(Math.abs(along), Math.abs(across))
                        + " mm were made to meet at the corner [3000, 0]"),
                s.guesses().stream().filter(g -> g.endsWith("[3000, 0]")).toList());
        assertEquals(5, s.guesses().size());
        assertEquals(List.of(), s.leftOut());
        String wide = drawn.replace("0.4", "4").replace("0.3", "3");
        if (along == across) {
            assertTrue(refused(wide, PLAIN).startsWith("no closed outline: the longest chain"), wide);
            assertEquals(
                    6e6,
                    read(MM, wide, new OutlineRequest(Optional.empty(), Optional.empty(), 5))
                            .outline()
                            .area(),
                    1e-6);
        }
    }

    /** One line whose ends cross, and a slanting corner: 0.3 mm of a side beyond a crossing at 30 degrees. */
    @Test
    void cornersOfOneLineAndSlantingOnes() {
        FloorSketch s =
                floor("0|LWPOLYLINE|8|F|70|0|10|-0.3|20|0|10|3000|20|0|10|3000|20|2000|10|0|20|2000|10|0|20|-0.2");
        assertEquals(6e6, s.outline().area(), 1e-6);
        double c = Math.sqrt(3) / 2;
        FloorSketch slanting = floor(String.join(
                "|",
                line("W", -0.3, 0, 2000, 0),
                line("W", 2000, 0, 2000 * c * c, 1000 * c * 2 * 0.5 + 0),
                line("W", 2000 * c * c, 1000 * c, -0.3 * c, -0.15)));
        assertEquals(0.5 * 2000 * 1000 * c, slanting.outline().area(), 1e-3);
        assertEquals(3, slanting.outline().path().vertices().size());
    }

    /** A slot of 200 x 60 with round ends, a washer's edge too tight for a job file's arcs, and a sliver. */
    @Test
    void keepOutsKeepTheirArcs() {
        FloorSketch s =
                floor(FLOOR + "|0|LWPOLYLINE|8|K|70|1|10|500|20|500|10|700|20|500|42|1|10|700|20|560|10|500|20|560|42|1"
                        + "|0|LWPOLYLINE|8|K|70|1|10|1000|20|500|10|1100|20|500|42|1|10|1100|20|508|10|1000|20|508|42|1"
                        + "|0|LWPOLYLINE|8|K|70|1|10|1500|20|500|10|1600|20|500.00001|10|1700|20|500");
        assertEquals(
                200 * 60 + Math.PI * 900,
                s.obstacles().get(0).contour().orElseThrow().area(),
                1e-6);
        assertEquals(
                100 * 8 + Math.PI * 16,
                s.obstacles().get(1).contour().orElseThrow().area(),
                2);
        assertEquals(2, s.obstacles().size());
        assertEquals(List.of("a closed line on layer K without area to speak of near [1700, 500]"), s.leftOut());
        String draft = JobDraft.text(s, "x.svg");
        assertTrue(
                draft.contains(
                        "[[500, 500], [700, 500],\n        {arc: [[730, 530], [700, 560]]}, [500, 560], {arc: [[470, 530], [500, 500]]}]"),
                draft);
    }

    /** Rounded corners of radius 200 take (4 - pi) r^2 off a rectangle. */
    @Test
    void arcsStayArcs() {
        String drawn = String.join(
                "|",
                line("W", 200, 0, 2800, 0),
                line("W", 3000, 200, 3000, 1800),
                line("W", 2800, 2000, 200, 2000),
                line("W", 0, 1800, 0, 200),
                "0|ARC|8|W|10|2800|20|200|40|200|50|270|51|0",
                "0|ARC|8|W|10|2800|20|1800|40|200|50|0|51|90",
                "0|ARC|8|W|10|200|20|1800|40|200|50|90|51|180",
                "0|ARC|8|W|10|200|20|200|40|200|50|180|51|270");
        Contour outline = floor(drawn).outline();
        assertEquals(6e6 - (4 - Math.PI) * 200 * 200, outline.area(), 1e-3);
        List<Vertex> v = outline.path().vertices();
        assertEquals(8, v.size());
        assertEquals(
                4,
                v.stream().filter(p -> Math.abs(p.bulge() - 0.41421356) < 1e-6).count());
    }

    /** A gap of 0.4 mm is closed and told; one of 3 mm is not, and the message says what would. */
    @Test
    void gaps() {
        String three =
                line("W", 0, 0, 3000, 0) + "|" + line("W", 3000, 0, 3000, 2000) + "|" + line("W", 3000, 2000, 0, 2000);
        FloorSketch s = floor(three + "|" + line("W", 0, 2000, 0, 1000.4) + "|" + line("W", 0, 1000, 0, 0));
        assertTrue(s.guesses().contains("a gap of 0.4 mm at [0, 1000.4] was closed"), s.guesses()::toString);
        assertTrue(refused(rectangle("F", 0, 0, 26000, 900), PLAIN).contains("over 25 m long"));
        assertEquals(
                "no closed outline: the longest chain of lines has a gap of 3 mm at [0, 0]; close it, or say --tolerance 3.1",
                refused(three + "|" + line("W", 0, 2000, 0, 3), PLAIN));
        OutlineRequest wide = new OutlineRequest(Optional.empty(), Optional.empty(), 3.1);
        assertEquals(
                6e6,
                read(MM, three + "|" + line("W", 0, 2000, 0, 3), wide).outline().area(),
                6000);
        assertTrue(
                refused(three, PLAIN).startsWith("no closed outline: the longest chain of lines is open from [0, 0]"));
    }

    /** A wall that divides the floor and one that sticks out of it change nothing; the outer boundary is followed. */
    @Test
    void junctionsAndLooseLines() {
        FloorSketch s = floor(String.join(
                "|",
                line("W", 0, 0, 1000, 0),
                line("W", 1000, 0, 3000, 0),
                line("W", 3000, 0, 3000, 2000),
                line("W", 3000, 2000, 1000, 2000),
                line("W", 1000, 2000, 0, 2000),
                line("W", 0, 2000, 0, 0),
                line("W", 1000, 0, 1000, 2000),
                line("W", 3000, 0, 3500, 0)));
        assertEquals(6e6, s.outline().area(), 1e-6);
        assertEquals(4, s.outline().path().vertices().size());
        assertEquals(
                List.of("lines that are part of no closed one: 1", "lines that divide a closed line: 1"), s.leftOut());
    }

    /** Anticlockwise from the lowest left corner, however it was drawn. */
    @Test
    void outlineIsTurned() {
        FloorSketch s = floor("0|LWPOLYLINE|8|F|70|1|10|0|20|2000|10|3000|20|2000|10|3000|20|0|10|1500|20|0|10|0|20|0");
        assertEquals(
                List.of(new Point(0, 0), new Point(3000, 0), new Point(3000, 2000), new Point(0, 2000)),
                s.outline().path().vertices().stream().map(Vertex::point).toList());
    }

    @ParameterizedTest
    @CsvSource({"1, 118.11", "2, 9.8425", "4, 3000", "5, 300", "6, 3", "10, 3.28084"})
    void unitsOfTheHeader(int code, double width) {
        FloorSketch s = read("9|$INSUNITS|70|" + code, rectangle("F", 0, 0, width, width / 2), PLAIN);
        assertEquals(3000, s.outline().box().width(), 0.1);
    }

    @Test
    void withoutAUnitTheSizeSaysWhich() {
        String head = "9|$MEASUREMENT|70|1";
        assertEquals(
                "the drawing names no unit, and its largest line measures 310 x 170: --drawing-units cm makes a floor of 3.10 x"
                        + " 1.70 m",
                refused(head, rectangle("F", 0, 0, 310, 170), PLAIN));
        assertEquals(
                "the drawing names no unit, and its largest line measures 9 x 6: --drawing-units ft makes a floor of 2.74 x 1.83 m",
                refused(head, rectangle("F", 0, 0, 9, 6), PLAIN));
        FloorSketch s = read(head, rectangle("F", 0, 0, 310, 170), request(DrawingUnit.CM, null));
        assertEquals(
                "the unit is cm as said, the drawing says none", s.guesses().get(0));
        assertEquals(3100, s.outline().box().width(), 1e-9);
    }

    @Test
    void aUnitThatCannotBeIsNotBelieved() {
        assertEquals(
                "the largest closed line (layer FLOOR) would be a floor of 3000.00 x 2000.00 m in m, over 25 m2; --drawing-units mm"
                        + " makes a floor of 3.00 x 2.00 m",
                refused("9|$INSUNITS|70|6", FLOOR, PLAIN));
    }

    @Test
    void aFrameIsNoFloor() {
        FloorSketch s = floor(rectangle("FRAME", -3000, -3000, 9000, 7000) + "|" + FLOOR);
        assertEquals("FLOOR", s.outline().layer());
        assertTrue(s.guesses().get(0).contains("layer FRAME is too large for a floor"), s.guesses()::toString);
    }

    @Test
    void aNamedLayerGoesFirst() {
        String drawn = FLOOR + "|" + rectangle("Tray", 100, 100, 900, 900);
        assertEquals("Tray", read(MM, drawn, request(null, "tray")).outline().layer());
        assertEquals(
                "nothing visible is on layer Try; there are FLOOR, Tray", refused(MM, drawn, request(null, "Try")));
        assertEquals(
                "no closed line is on layer W",
                refused(MM, drawn + "|" + line("W", 0, 0, 10, 0) + "|" + line("W", 50, 0, 50, 5000), request(null, "W"))
                        .split(":", -1)[0]);
    }

    @Test
    void likeOnesCannotBeToldApart() {
        String said = refused(FLOOR + "|" + rectangle("AFT", 4000, 0, 6900, 2000), PLAIN);
        assertEquals(
                "several closed lines could be the floor: --contour 1: 6.00 m2 on layer FLOOR at [0, 0]; --contour 2: 5.80 m2"
                        + " on layer AFT at [4000, 0]; say which, or say --at X,Y for a place on it, or --layer NAME",
                said);
        assertEquals(
                5.8e6,
                read(MM, FLOOR + "|" + rectangle("AFT", 4000, 0, 6900, 2000), request(null, "AFT"))
                        .outline()
                        .area());
    }

    @Test
    void crossingLinesAreRefusedWithThePlace() {
        assertEquals(
                "the outline (layer F) crosses or touches itself near [1500, 1000]; draw it as one closed line",
                refused("0|LWPOLYLINE|8|F|70|1|10|0|20|0|10|3000|20|2000|10|3000|20|0|10|0|20|2000", PLAIN));
    }

    /** Two rectangles of one line that touch at a corner are no floor. */
    @Test
    void touchingLoopsAreRefused() {
        assertTrue(refused(
                        "0|LWPOLYLINE|8|F|70|1|10|0|20|0|10|1000|20|0|10|1000|20|1000|10|2000|20|1000|10|2000|20|2000|10|1000|20|2000"
                                + "|10|1000|20|1000|10|0|20|1000",
                        PLAIN)
                .contains("near [1000, 1000]"));
    }

    @Test
    void farPlacesAreMoved() {
        FloorSketch s = floor(rectangle("F", 4500000.25, 5400000.5, 4503000.25, 5402000.5) + "|"
                + circle("H", 4500500.25, 5400500.5, 30));
        assertEquals(new Point(0, 0), s.outline().path().vertices().get(0).point());
        assertEquals(new Point(500, 500), s.obstacles().get(0).centre());
        assertTrue(s.guesses().get(1).contains("its place [4500000.25, 5400000.5] is [0, 0] here"));
    }

    @Test
    void holesAndBoltsByTheirSize() {
        FloorSketch s = floor(String.join(
                "|",
                FLOOR,
                circle("H", 500, 500, 6),
                circle("H", 1000, 500, 40),
                circle("H", 1500, 500, 150),
                circle("H", 1500, 500, 20),
                circle("H", 9000, 500, 20),
                "0|POINT|8|P|10|2000|20|500",
                "0|POINT|8|P|10|500|20|500",
                "0|LWPOLYLINE|8|P|70|1|10|2400|20|1500|42|1|10|2440|20|1500|42|1",
                rectangle("S", 2900, 900, 3100, 1100)));
        List<String> kinds = s.obstacles().stream()
                .map(o -> o.kind() + " " + o.clearance() + " " + o.why())
                .toList();
        assertEquals(
                List.of(
                        "other 40.0 circle of 300 mm, layer H",
                        "other 40.0 closed line, layer S, reaches over the outline",
                        "drain 60.0 circle of 80 mm, layer H",
                        "drain 60.0 circle of 40 mm, layer P",
                        "bolt 50.0 circle of 12 mm, layer H",
                        "bolt 50.0 point, layer P"),
                kinds);
        assertEquals(
                List.of("closed lines outside of the outline: 1", "closed lines within keep-outs: 1"), s.leftOut());
    }

    @Test
    void wordsNameWhatTheyStandBeside() {
        FloorSketch s = floor(String.join(
                "|",
                FLOOR,
                circle("H", 500, 500, 40),
                rectangle("S", 2000, 1000, 2300, 1300),
                text(570, 480, "Floor drain"),
                text(2050, 1100, "Post"),
                text(3050, 900, "bow"),
                text(1200, 1200, "heat me"),
                text(1500, 20, "3000"),
                text(9000, 9000, "sheet 1")));
        assertEquals(
                List.of("Post", "Floor drain"),
                s.obstacles().stream().map(Obstacle::name).toList());
        assertEquals("drain", s.obstacles().get(1).kind());
        assertEquals(1, s.marks().get(0).edge());
        assertEquals("bow", s.marks().get(0).text());
        assertEquals("heat me", s.remarks().get(0).text());
        assertEquals(List.of("words that are numbers: 1", "words elsewhere: 1"), s.leftOut());
    }

    @Test
    void whatWasLeftOutIsSaid() {
        String layers = "0|LAYER|2|ICE|70|1|62|1";
        String drawn = FLOOR + "|0|HATCH|8|A|0|DIMENSION|8|A|0|DIMENSION|8|A|" + rectangle("ICE", 0, 0, 9000, 900)
                + "|0|LINE|8|A|67|1|10|0|20|0|11|1|21|1";
        byte[] file = Snippets.drawing(MM, layers, "", drawn).getBytes(StandardCharsets.UTF_8);
        FloorSketch s = FloorReading.read("x.dxf", new DxfReader().read(file, Optional.empty()), PLAIN);
        assertEquals(
                List.of(
                        "DIMENSION: 2",
                        "HATCH: 1",
                        "entities on layer ICE, which is frozen or off: 1",
                        "entities in paper space: 1"),
                s.leftOut());
    }

    @Test
    void smallArcsAndStraightCornersAreTidied() {
        FloorSketch s = floor(
                "0|LWPOLYLINE|8|F|70|1|10|0|20|0|10|1500|20|0.001|10|2997|20|0|42|0.41421356|10|3000|20|3|10|3000|20|2000|10|0|20|2000");
        assertEquals(5, s.outline().path().vertices().size());
        assertTrue(s.guesses().contains("1 arcs with a radius of 5 mm or less became straight"), s.guesses()::toString);
    }

    /** Found by spoiling: whatever the drawing calls itself, a comment stays one line. */
    @Test
    void namesOfTheDrawingStayInTheirLine() {
        byte[] file = Snippets.binary(Snippets.drawing("9|$ACADVER|1|AC10~21: x|" + MM, "", "", FLOOR), true);
        for (int i = 0; i < file.length; i++) {
            file[i] = file[i] == '~' ? (byte) '\n' : file[i];
        }
        DxfDrawing read = new DxfReader().read(file, Optional.empty());
        assertEquals("AC10\n21: x", read.version());
        String draft = JobDraft.text(FloorReading.read("x.dxf", read, PLAIN), "a\nb.svg");
        draft.lines().limit(6).forEach(l -> assertTrue(l.startsWith("#"), l));
    }

    /** Found by spoiling: sizes that are next to nothing, or next to endless. */
    @Test
    void extremeSizes() {
        FloorSketch s = floor(FLOOR + "|" + circle("H", 500, 500, 1e-9)
                + "|0|LWPOLYLINE|8|F|70|1|10|0|20|0|42|1e-300|10|90|20|0|42|1e11|10|90|20|90");
        assertEquals(
                "bolt 50.0 point, layer H",
                s.obstacles().get(1).kind() + " 50.0 " + s.obstacles().get(1).why());
        assertEquals(2, s.obstacles().size());
    }

    private static OutlineRequest request(DrawingUnit unit, String layer) {
        return new OutlineRequest(Optional.ofNullable(unit), Optional.ofNullable(layer), 0.5);
    }

    private static String line(String layer, double x1, double y1, double x2, double y2) {
        return "0|LINE|8|" + layer + "|10|" + x1 + "|20|" + y1 + "|11|" + x2 + "|21|" + y2;
    }

    private static String circle(String layer, double x, double y, double r) {
        return "0|CIRCLE|8|" + layer + "|10|" + x + "|20|" + y + "|40|" + r;
    }

    private static String text(double x, double y, String words) {
        return "0|TEXT|8|T|10|" + x + "|20|" + y + "|40|30|1|" + words;
    }

    private static String rectangle(String layer, double x1, double y1, double x2, double y2) {
        return "0|LWPOLYLINE|8|" + layer + "|70|1|10|" + x1 + "|20|" + y1 + "|10|" + x2 + "|20|" + y1 + "|10|" + x2
                + "|20|" + y2 + "|10|" + x1 + "|20|" + y2;
    }

    private static FloorSketch floor(String entities) {
        return read(MM, entities, PLAIN);
    }

    private static FloorSketch read(String header, String entities, OutlineRequest request) {
        byte[] file = Snippets.drawing(header, "", "", entities).getBytes(StandardCharsets.UTF_8);
        return FloorReading.read("x.dxf", new DxfReader().read(file, request.unit()), request);
    }

    private static String refused(String entities, OutlineRequest request) {
        return refused(MM, entities, request);
    }

    private static String refused(String header, String entities, OutlineRequest request) {
        return assertThrows(NoOutline.class, () -> read(header, entities, request))
                .getMessage();
    }
}
