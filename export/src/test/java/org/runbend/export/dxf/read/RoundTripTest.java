package org.runbend.export.dxf.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.runbend.export.drawing.DemoSheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfDocument;
import org.runbend.export.dxf.DxfLayer;
import org.runbend.export.dxf.DxfVertex;

/** What our writer writes, our reader reads: the same entities, to the decimals of the file. */
class RoundTripTest {
    private static final int DRAWINGS = 1000;
    private static final double LAST_DECIMAL = 0.51e-6;

    /** Counts are those the demo sheet was made of; the triangle and the dimensions are no geometry of a floor. */
    @Test
    void demoSheet() {
        DxfDrawing drawing = new DxfReader().read(DxfBackend.bytes(DemoSheet.sheet()), Optional.empty());
        assertEquals("AC1015", drawing.version());
        assertEquals(Optional.of(DrawingUnit.MM), drawing.unit());
        assertEquals("{DIMENSION=3, SOLID=1}", drawing.ignored().toString());
        assertEquals(
                "{ARC=1, CIRCLE=2, DIMENSION=3, LWPOLYLINE=5, MTEXT=1, SOLID=1, TEXT=3}",
                drawing.counts().toString());
        assertTrue(drawing.entities().contains(new DxfEntity.Circle("KEEP_OUT", 1050, 640, 60)));
        assertTrue(drawing.entities().contains(new DxfEntity.Text("NOTE", 1050, 640, 18, 0, 1, 1, "drain \u00d8 60")));
        assertTrue(drawing.entities()
                .contains(new DxfEntity.Text(
                        "NOTE", 0, -120, 18, 0, 0, 2, "seen from above\ndoor: \u017b\u00f3\u0142w")));
    }

    @Test
    void randomDrawings() {
        for (int seed = 0; seed < DRAWINGS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            DxfDocument document = new DxfDocument();
            document.layer(new DxfLayer("A", 1, "Continuous", 25));
            List<DxfEntity> wanted = new ArrayList<>();
            for (int i = random.nextInt(1, 12); i > 0; i--) {
                wanted.add(draw(document, random, random.nextBoolean() ? "A" : "0"));
            }
            List<DxfEntity> read =
                    new DxfReader().read(document.toBytes(), Optional.empty()).entities();
            assertEquals(wanted.size(), read.size(), "seed " + seed);
            for (int i = 0; i < read.size(); i++) {
                assertAlike(wanted.get(i), read.get(i), "seed " + seed + " entity " + i);
            }
        }
    }

    private static DxfEntity draw(DxfDocument document, SplittableRandom r, String layer) {
        double x = r.nextDouble(-5000, 5000);
        double y = r.nextDouble(-5000, 5000);
        double size = r.nextDouble(1, 3000);
        double start = r.nextInt(0, 360) + r.nextDouble();
        switch (r.nextInt(5)) {
            case 0 -> {
                document.model().line(layer, x, y, x + size, y - size);
                return new DxfEntity.Line(layer, x, y, x + size, y - size);
            }
            case 1 -> {
                double sweep = r.nextDouble(0.1, 359.9);
                document.model().arc(layer, x, y, size, start, start + sweep);
                return new DxfEntity.Arc(layer, x, y, size, start, sweep);
            }
            case 2 -> {
                document.model().circle(layer, x, y, size);
                return new DxfEntity.Circle(layer, x, y, size);
            }
            case 3 -> {
                int column = r.nextInt(3);
                int row = r.nextInt(3);
                String words = "w\u00e4ll " + r.nextInt(1000) + " \u5e8a \ud83d\udee0 5 % d";
                document.model().text(layer, x, y, size, start, column, row, words);
                return new DxfEntity.Text(layer, x, y, size, start, column, row, words);
            }
            default -> {
                return polyline(document, r, layer);
            }
        }
    }

    private static DxfEntity polyline(DxfDocument document, SplittableRandom r, String layer) {
        List<DxfVertex> vertices = new ArrayList<>();
        int n = r.nextInt(2, 20);
        boolean closed = r.nextBoolean();
        for (int i = 0; i < n; i++) {
            boolean straight = r.nextBoolean() || (!closed && i == n - 1);
            vertices.add(new DxfVertex(
                    10 * i + r.nextDouble(), r.nextDouble(-900, 900), straight ? 0 : r.nextDouble(-1, 1)));
        }
        document.model().polyline(layer, vertices, closed);
        return new DxfEntity.Polyline(layer, vertices, closed);
    }

    private static void assertAlike(DxfEntity wanted, DxfEntity read, String what) {
        assertEquals(wanted.getClass(), read.getClass(), what);
        assertEquals(wanted.layer(), read.layer(), what);
        double[] a = numbers(wanted);
        double[] b = numbers(read);
        assertEquals(a.length, b.length, what);
        for (int i = 0; i < a.length; i++) {
            assertEquals(a[i], b[i], LAST_DECIMAL, what);
        }
        if (wanted instanceof DxfEntity.Text t) {
            assertEquals(t.content(), ((DxfEntity.Text) read).content(), what);
        }
    }

    private static double[] numbers(DxfEntity e) {
        if (e instanceof DxfEntity.Line l) {
            return new double[] {l.x1(), l.y1(), l.x2(), l.y2()};
        }
        if (e instanceof DxfEntity.Arc a) {
            return new double[] {a.x(), a.y(), a.radius(), a.start() % 360, a.sweep()};
        }
        if (e instanceof DxfEntity.Circle c) {
            return new double[] {c.x(), c.y(), c.radius()};
        }
        if (e instanceof DxfEntity.Text t) {
            return new double[] {t.x(), t.y(), t.height(), t.angle(), t.column(), t.row()};
        }
        DxfEntity.Polyline p = (DxfEntity.Polyline) e;
        return p.vertices().stream()
                .flatMap(v -> List.of(v.x(), v.y(), v.bulge()).stream())
                .mapToDouble(d -> d)
                .toArray();
    }
}
