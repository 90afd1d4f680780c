package org.runbend.export.dxf.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.export.dxf.DxfVertex;

/** Small drawings written by hand from the DXF reference; the numbers expected are worked beside them. */
class DxfReaderTest {
    private static final double EXACT = 1e-9;

    @Test
    void lineEndsCommentsAndPaddingDoNotMatter() {
        String text = "999|made by hand|"
                + "  0|SECTION|  2|ENTITIES|  0|LINE|  8|A| 10|1.5| 20|-2E+1|11|+3|21|.5|0|ENDSEC|0|EOF|junk";
        for (String end : List.of("\n", "\r\n", "\r")) {
            byte[] file = text.replace("|", end).getBytes(StandardCharsets.US_ASCII);
            assertEquals(
                    List.of(new DxfEntity.Line("A", 1.5, -20, 3, 0.5)),
                    read(file).entities());
        }
        byte[] marked = ("\ufeff" + text.replace('|', '\n')).getBytes(StandardCharsets.UTF_8);
        assertEquals(1, read(marked).entities().size());
    }

    @Test
    void binaryFormsSayTheSame() {
        DxfDrawing text = read(Snippets.everything().getBytes(StandardCharsets.UTF_8));
        assertEquals(text, read(Snippets.binary(Snippets.everything(), true)));
        assertEquals(text, read(Snippets.binary(Snippets.everything(), false)));
    }

    @Test
    void sectionsInAnyOrderAndUnknownOnes() {
        String file = Snippets.lines(
                "0|SECTION|2|ENTITIES|0|LINE|8|OFF|10|0|20|0|11|1|21|1|0|INSERT|8|A|2|K|10|5|20|6|0|ENDSEC"
                        + "|0|SECTION|2|SURPRISE|0|LINE|10|x|0|ENDSEC|0|SECTION|2|BLOCKS|0|BLOCK|2|k|10|0|20|0|0|POINT|8|0|10|1|20|1|0|ENDBLK|0|ENDSEC"
                        + "|0|SECTION|2|TABLES|0|TABLE|2|LAYER|0|LAYER|2|Off|70|0|62|-7|0|ENDTAB|0|ENDSEC|0|EOF");
        DxfDrawing drawing = read(file);
        assertEquals(List.of(new DxfEntity.Spot("A", 6, 7)), drawing.entities());
        assertEquals(Map.of("Off", 1), drawing.hidden());
    }

    /** A block's layer 0 is the insert's layer; off hides only what is on it; frozen hides the whole insert. */
    @Test
    void frozenOffPaperAndInvisible() {
        String layers = "0|LAYER|2|OFF|70|0|62|-1|0|LAYER|2|ICE|70|1|62|1|0|LAYER|2|ON|70|4|62|1";
        String block = "0|BLOCK|2|K|10|0|20|0|0|POINT|8|0|10|1|20|1|0|POINT|8|ON|10|2|20|2|0|ENDBLK";
        String entities = "0|INSERT|2|K|8|OFF|0|INSERT|2|K|8|ICE|0|INSERT|2|K|8|ON|0|POINT|8|ON|67|1|10|9|20|9"
                + "|0|POINT|8|ON|60|1|10|9|20|9|0|POINT|8|on|10|3|20|3";
        DxfDrawing drawing = read(Snippets.drawing("9|$ACADVER|1|AC1009", layers, block, entities));
        assertEquals(
                List.of(
                        new DxfEntity.Spot("ON", 2, 2),
                        new DxfEntity.Spot("ON", 1, 1),
                        new DxfEntity.Spot("ON", 2, 2),
                        new DxfEntity.Spot("ON", 3, 3)),
                drawing.entities());
        assertEquals(Map.of("OFF", 1, "ICE", 1), drawing.hidden());
        assertEquals(1, drawing.paper());
        assertEquals(List.of("1 invisible entities were left out"), drawing.remarks());
    }

    /** Normal (0, 0, -1): x axis = Y x N = (-1, 0, 0), y axis = N x x = (0, 1, 0); so x turns its sign, and arcs turn over. */
    @Test
    void mirroredPlane() {
        DxfDrawing drawing = read(
                Snippets.entities(
                        "0|ARC|8|A|10|10|20|5|40|2|50|0|51|90|210|0|220|0|230|-1|0|LWPOLYLINE|8|A|70|0|10|1|20|2|42|0.5|10|3|20|4|210|0|220|0|230|-1"));
        DxfEntity.Arc arc = (DxfEntity.Arc) drawing.entities().get(0);
        assertEquals(-10, arc.x(), EXACT);
        assertEquals(90, arc.start(), EXACT);
        assertEquals(90, arc.sweep(), EXACT);
        assertEquals(
                new DxfEntity.Polyline("A", List.of(new DxfVertex(-1, 2, -0.5), new DxfVertex(-3, 4, 0)), false),
                drawing.entities().get(1));
    }

    /** Base (1, 1), scale 2, turned by 90: (4, 1) -> (3, 0) -> (6, 0) -> (0, 6) -> (100, 206). Columns step along the turned x. */
    @Test
    void insertScalesTurnsAndRepeats() {
        String block = "0|BLOCK|2|K|10|1|20|1|0|POINT|8|0|10|4|20|1|0|CIRCLE|8|0|10|1|20|1|40|3|0|ENDBLK";
        DxfDrawing drawing = read(Snippets.drawing(
                "9|$INSUNITS|70|6", "", block, "0|INSERT|8|A|2|K|10|100|20|200|41|2|42|2|43|2|50|90|70|2|44|30"));
        assertEquals(
                List.of(
                        new DxfEntity.Spot("A", 100, 206),
                        new DxfEntity.Circle("A", 100, 200, 6),
                        new DxfEntity.Spot("A", 100, 236),
                        new DxfEntity.Circle("A", 100, 230, 6)),
                drawing.entities());
        assertEquals(Optional.of(DrawingUnit.M), drawing.unit());
    }

    /** A circle of radius 10 scaled by 3 and 1 is x^2/900 + y^2/100 = 1; chords within 0.1 of it, on the inside. */
    @Test
    void squeezedCircleBecomesChordsWithinTolerance() {
        String block = "0|BLOCK|2|K|10|0|20|0|0|CIRCLE|8|0|10|0|20|0|40|10|0|ENDBLK";
        DxfDrawing drawing = read(Snippets.drawing("", "", block, "0|INSERT|8|A|2|K|10|0|20|0|41|3|42|1"));
        DxfEntity.Curve curve = (DxfEntity.Curve) drawing.entities().get(0);
        assertTrue(curve.closed());
        for (DxfVertex v : curve.chords()) {
            assertEquals(1, v.x() * v.x() / 900 + v.y() * v.y() / 100, EXACT);
        }
        // Pi 30 10 less at most 0.1 x the perimeter (133.65, Ramanujan).
        assertEquals(Math.PI * 300, area(curve.chords()), 0.1 * 133.65);
        assertTrue(curve.chords().size() < 60);
    }

    /** Weights 1, cos 45, 1 over the corner of a square make a quarter circle exactly (textbook). */
    @Test
    void rationalSplineIsAQuarterCircle() {
        DxfEntity.Curve curve = (DxfEntity.Curve) read(Snippets.entities(
                        "0|SPLINE|8|A|70|4|71|2|40|0|40|0|40|0|40|1|40|1|40|1|41|1|41|0.70710678118654752|41|1|10|500|20|0|10|500|20|500|10|0|20|500"))
                .entities()
                .get(0);
        List<DxfVertex> v = curve.chords();
        for (DxfVertex p : v) {
            assertEquals(500, Math.hypot(p.x(), p.y()), EXACT);
        }
        for (int i = 1; i < v.size(); i++) {
            double x = (v.get(i - 1).x() + v.get(i).x()) / 2;
            double y = (v.get(i - 1).y() + v.get(i).y()) / 2;
            assertEquals(500, Math.hypot(x, y), 0.1);
        }
        assertEquals(new DxfVertex(0, 500, 0), v.get(v.size() - 1));
    }

    /** Points of a parabola with its end tangents (x, x^2 from 0 to 200 has slopes 0 and 400 x 1/1000): near it everywhere. */
    @Test
    void splineOfPointsPassesThroughThem() {
        DxfEntity.Curve curve = (DxfEntity.Curve) read(Snippets.entities(
                        "0|SPLINE|8|A|70|8|71|3|74|4|11|0|21|0|11|100|21|10|11|200|21|40|11|300|21|90|12|1|22|0|13|1|23|0.6"))
                .entities()
                .get(0);
        for (double x : new double[] {0, 100, 200, 300}) {
            assertTrue(curve.chords().stream().anyMatch(v -> Math.hypot(v.x() - x, v.y() - x * x / 1000) < EXACT));
        }
        for (DxfVertex v : curve.chords()) {
            assertEquals(v.x() * v.x() / 1000, v.y(), 0.5);
        }
    }

    /** An ellipse with equal half axes is a circle, a part of it an arc. */
    @Test
    void roundEllipseIsAnArc() {
        List<DxfEntity> read = read(Snippets.entities(
                        "0|ELLIPSE|8|A|10|1|20|2|11|0|21|5|40|1|41|0|42|1.5707963267948966|0|ELLIPSE|8|A|10|1|20|2|11|0|21|5|40|1"))
                .entities();
        DxfEntity.Arc arc = (DxfEntity.Arc) read.get(0);
        assertEquals(90, arc.start(), EXACT);
        assertEquals(90, arc.sweep(), EXACT);
        assertEquals(new DxfEntity.Circle("A", 1, 2, 5), read.get(1));
    }

    /** Spline frames are no corners of the curve; numbers after an embedded object are not the entity's own. */
    @Test
    void frameVerticesAndEmbeddedObjectsAreNotTaken() {
        List<DxfEntity> read = read(Snippets.entities(
                        "0|POLYLINE|8|A|66|1|70|4|0|VERTEX|10|0|20|0|70|8|0|VERTEX|10|5|20|9|70|16"
                                + "|0|VERTEX|10|10|20|0|70|8|0|SEQEND|0|MTEXT|8|A|10|1|20|2|40|3|71|5|1|x|101|Embedded Object|10|7|20|7|40|9|1|y"))
                .entities();
        assertEquals(
                new DxfEntity.Polyline("A", List.of(new DxfVertex(0, 0, 0), new DxfVertex(10, 0, 0)), false),
                read.get(0));
        assertEquals(new DxfEntity.Text("A", 1, 2, 3, 0, 1, 1, "x"), read.get(1));
    }

    @ParameterizedTest
    @CsvSource({
        "ANSI_1250, windows-1250, Pod\u0142oga",
        "ANSI_1251, windows-1251, \u041f\u043e\u043b",
        "ANSI_932, windows-31j, \u8868\u9762",
        "ANSI_936, GBK, \u5730\u677f",
        "DOS850, IBM850, Fu\u00dfboden",
        "ISO8859-1, ISO-8859-1, \u00e9tage",
        "nonsense, windows-1252, Fu\u00dfboden"
    })
    void codePages(String header, String charset, String layer) {
        String file = Snippets.drawing(
                "9|$ACADVER|1|AC1015|9|$DWGCODEPAGE|3|" + header, "", "", "0|POINT|8|" + layer + "|10|0|20|0");
        byte[] bytes = file.getBytes(Charset.forName(charset));
        assertEquals(layer, read(bytes).entities().get(0).layer());
    }

    @Test
    void utf8FromR2007OnWithAWayBack() {
        String file = Snippets.drawing(
                "9|$ACADVER|1|AC1021|9|$DWGCODEPAGE|3|ANSI_1252", "", "", "0|POINT|8|Fu\u00dfboden \u5e8a|10|0|20|0");
        assertEquals(
                "Fu\u00dfboden \u5e8a",
                read(file.getBytes(StandardCharsets.UTF_8)).entities().get(0).layer());
        String western = file.replace(" \u5e8a", "");
        assertEquals(
                "Fu\u00dfboden",
                read(western.getBytes(Charset.forName("windows-1252")))
                        .entities()
                        .get(0)
                        .layer());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "%%c60 %%D %%p %%% %%uline%%u; \u00d860 \u00b0 \u00b1 % line",
                "A%%066C; ABC",
                "\\U+0141\\U+00f3d\\U+017a; \u0141\u00f3d\u017a",
                "\\M+182A0; \u3042",
                "a^ b^Ic; a^b c"
            })
    void wordsOfText(String written, String meant) {
        assertEquals(meant, Escapes.line(written));
    }

    @Test
    void wordsOfMultiLineText() {
        assertEquals("Seat bolt", Escapes.paragraphs("{\\fArial|b0|i0|c0;Seat} \\H2x;bolt"));
        assertEquals("a b \\ {c}", Escapes.paragraphs("a\\~b \\\\ \\{c\\}"));
        assertEquals("one\ntwo 1/2", Escapes.paragraphs("one\\Ptwo \\S1#2;"));
        assertEquals("Drain \u00d8", Escapes.paragraphs("\\LDrain\\l \\C1;%%c"));
        assertEquals("cut ", Escapes.paragraphs("cut \\Hoff"));
    }

    @Test
    void whatHasNoShapeIsNamed() {
        DxfDrawing drawing = read(
                Snippets.entities(
                        "0|CIRCLE|8|A|10|0|20|0|40|0|0|LINE|8|A|10|1|20|1|11|1|21|1|0|LINE|8|A|10|1|20|1|0|HATCH|8|A|10|x"
                                + "|0|LWPOLYLINE|8|A|90|2000000000|10|0|20|0|0|SPLINE|8|A|71|3|10|0|20|0|10|1|20|1|0|INSERT|8|A|2|NOWHERE"
                                + "|0|POLYLINE|8|A|66|1|70|64|0|VERTEX|10|0|20|0|0|VERTEX|10|1|20|0|0|SEQEND|0|CIRCLE|8|A|10|0|20|0|40|5|210|1|220|0|230|0"));
        assertEquals(List.of(), drawing.entities());
        assertEquals(
                "{CIRCLE seen from its side=1, CIRCLE without a radius=1, HATCH=1, INSERT of a missing block=1, LINE of no length=1,"
                        + " LINE without both ends=1, LWPOLYLINE of fewer than two vertices=1, POLYLINE mesh=1, SPLINE with wrong knots or"
                        + " weights=1}",
                drawing.ignored().toString());
        assertEquals(List.of("block 'NOWHERE' is not in the file; what it shows is missing"), drawing.remarks());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'0|SECTION|2|ENTITIES|0|LINE|10|1,5'; 'line 8: group 10: ''1,5'' is no number; a point is wanted, not a comma'",
                "'0|SECTION|2|ENTITIES|0|LINE|10|NaN'; 'line 8: group 10: ''NaN'' is no number'",
                "'0|SECTION|2|ENTITIES|0|LINE|10|1e99'; 'line 7: group 10 is 1.0E99, a number up to 1e12 is wanted'",
                "'0|SECTION|2|ENTITIES|0|LINE|10|0x10'; 'line 8: group 10: ''0x10'' is no number'",
                "'0|SECTION|2|ENTITIES|0|LINE|ten|1'; 'line 7: ''ten'' stands where a group code is wanted, a whole number'",
                "'0|SECTION|2|ENTITIES|0|LINE|10|1|0'; 'line 9: the file ends within a pair of group code and value; it was cut off'",
                "'0|SECTION|2|ENTITIES|0|LINE|10|1|0|ENDSEC'; 'line 9: the file ends without EOF; it was cut off, have it sent again'",
                "'0|SECTION|2|HEADER|9|$INSUNITS|70|4.5'; 'line 7: group 70 is 4.5, a whole number is wanted'"
            })
    void faultsNameThePlace(String pairs, String message) {
        byte[] file = pairs.replace('|', '\n').getBytes(StandardCharsets.US_ASCII);
        String said = assertThrows(DxfFault.class, () -> read(file)).getMessage();
        // A value is named by its own line, a pair by the line of its code.
        assertEquals(message, said);
    }

    @Test
    void filesThatAreNoDrawing() {
        assertEquals("the file is empty", fault(new byte[0]));
        assertEquals("this is a DWG file; save it as DXF", fault("AC1015\0\0\0".getBytes(StandardCharsets.US_ASCII)));
        assertEquals(
                "this is no DXF file: it begins with '%PDF-1.4', a group code is wanted",
                fault("%PDF-1.4\n".getBytes(StandardCharsets.US_ASCII)));
    }

    @Test
    void cutBinaryFile() {
        byte[] whole = Snippets.binary(Snippets.everything(), true);
        String said = fault(java.util.Arrays.copyOf(whole, 300));
        assertTrue(said.startsWith("byte 2") && said.contains("cut off"), said);
    }

    @Test
    void blocksHaveLimits() {
        String self = Snippets.drawing("", "", "0|BLOCK|2|K|10|0|20|0|0|INSERT|8|0|2|K|0|ENDBLK", "0|INSERT|8|A|2|K");
        assertTrue(fault(self.getBytes(StandardCharsets.US_ASCII)).endsWith("block 'K' inserts itself"));
        String many = Snippets.drawing(
                "", "", "0|BLOCK|2|K|10|0|20|0|0|ENDBLK", "0|INSERT|8|A|2|K|70|30000|71|30000|44|1|45|1");
        assertTrue(fault(many.getBytes(StandardCharsets.US_ASCII))
                .contains("is inserted 900000000 times, at most 2000000"));
        StringBuilder tower = new StringBuilder("0|BLOCK|2|K0|10|0|20|0|0|POINT|8|0|10|0|20|0|0|ENDBLK");
        for (int i = 1; i < 30; i++) {
            tower.append("|0|BLOCK|2|K" + i + "|10|0|20|0|0|INSERT|8|0|2|K" + (i - 1) + "|70|3|44|1|0|ENDBLK");
        }
        String high = Snippets.drawing("", "", tower.toString(), "0|INSERT|8|A|2|K29");
        assertTrue(fault(high.getBytes(StandardCharsets.US_ASCII)).contains("over 2000000 copies and chords"));
        DxfReader shallow = new DxfReader(new DxfLimits(1_000_000, 1000, 5));
        byte[] bytes = high.getBytes(StandardCharsets.US_ASCII);
        assertTrue(assertThrows(DxfFault.class, () -> shallow.read(bytes, Optional.empty()))
                .getMessage()
                .contains("over 5 blocks deep"));
    }

    private static double area(List<DxfVertex> v) {
        double sum = 0;
        for (int i = 0; i < v.size(); i++) {
            DxfVertex b = v.get((i + 1) % v.size());
            sum += v.get(i).x() * b.y() - b.x() * v.get(i).y();
        }
        return sum / 2;
    }

    private static String fault(byte[] file) {
        return assertThrows(DxfFault.class, () -> read(file)).getMessage();
    }

    private static DxfDrawing read(String file) {
        return read(file.getBytes(StandardCharsets.UTF_8));
    }

    private static DxfDrawing read(byte[] file) {
        return new DxfReader().read(file, Optional.empty());
    }
}
