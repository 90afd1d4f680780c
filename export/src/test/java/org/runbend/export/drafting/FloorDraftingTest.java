package org.runbend.export.drafting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.DemoPlan;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.DxfBackend;

class FloorDraftingTest {
    private final Sheet sheet = new FloorDrafting().draw(DemoPlan.plan());

    @TempDir
    java.nio.file.Path folder;

    /** The corners are those written in the plan, not near them; a half turn has bulge 1 (tan of a quarter of 180). */
    @Test
    void pipeIsOneOpenPathThroughThePlansPoints() {
        List<Shape> shapes = on(Layer.PIPE);
        assertEquals(1, shapes.size());
        Path pipe = (Path) shapes.get(0);
        assertFalse(pipe.closed());
        assertEquals(14, pipe.vertices().size());
        assertEquals(new Vertex(75, 375, 0), pipe.vertices().get(0));
        assertEquals(new Point(1350, 225), pipe.vertices().get(4).point());
        assertEquals(1, pipe.vertices().get(3).bulge(), 1e-12);
        assertEquals(-1, pipe.vertices().get(5).bulge(), 1e-12);
        assertEquals(new Vertex(75, 525, 0), pipe.vertices().get(13));
    }

    /**
     * Bodies by hand: the run from (150, 75) to the right, 100 in, 1000 long, 60 to each side; the twin piece midway between
     * y = 225 and 375, from x = 1250 back to 450, 135 to each side; the run from (1350, 825) to the left, 100 in, 800 long.
     */
    @Test
    void plateBodiesLieOnTheirRuns() {
        List<Extent> bodies = on(Layer.PLATE).stream().map(Shape::extent).toList();
        assertEquals(3, bodies.size());
        near(new Extent(250, 15, 1250, 135), bodies.get(0));
        near(new Extent(450, 165, 1250, 435), bodies.get(1));
        near(new Extent(450, 765, 1250, 885), bodies.get(2));
    }

    @Test
    void keepOutsAreClosedContours() {
        List<Shape> shapes = on(Layer.KEEP_OUT);
        assertEquals(6, shapes.size(), "bare and grown drain, bolt and post");
        assertTrue(shapes.stream().noneMatch(s -> s instanceof Path p && !p.closed()));
        near(new Extent(310, 520, 490, 680), shapes.get(4).extent());
    }

    /** A second program counts what the sheet holds, layer by layer, and finds nothing to mend. */
    @Test
    void ezdxfCountsTheSame() throws IOException {
        java.nio.file.Path file = Files.write(folder.resolve("drawing.dxf"), DxfBackend.bytes(sheet));
        List<String> facts = OutsideReader.ezdxf(file);
        assertTrue(facts.containsAll(List.of("errors 0", "fixes 0", "insunits 4")), facts::toString);
        assertTrue(facts.contains("parts PIPE open 7 6 r=75.000 bulge<=1"), facts::toString);
        Map<String, Integer> counted = new TreeMap<>();
        facts.stream()
                .filter(f -> f.startsWith("count "))
                .map(f -> f.split(" ", -1))
                .forEach(f -> counted.merge(f[1], Integer.parseInt(f[3]), Integer::sum));
        Map<String, Integer> drawn = sheet.marks().stream()
                .collect(Collectors.toMap(m -> m.layer().name(), m -> 1, Integer::sum, TreeMap::new));
        assertEquals(drawn, counted);
    }

    @Test
    void saysFromWhereItIsSeenAndWhatOneKnowsItBy() {
        List<String> texts =
                on(Layer.NOTE).stream().flatMap(FloorDraftingTest::strings).toList();
        assertTrue(
                texts.containsAll(List.of("A flow", "A return", "window", "door", "drain", "bolt", "post", "locker")));
        assertTrue(texts.stream().anyMatch(t -> t.contains("seen from above")), texts::toString);
        assertTrue(on(Layer.TITLE).stream()
                .flatMap(FloorDraftingTest::strings)
                .toList()
                .containsAll(List.of("Reading room <caf\u00e9>", "order HF-1042", "sizes in mm, 1:1 in the DXF file")));
    }

    /** And keep 0.4 of the smaller letters' height between them, so that the 6 and the 3 of two runs are not read as 63. */
    @Test
    void textsDoNotCoverEachOther() {
        List<Text> texts = on(Layer.NOTE).stream()
                .filter(Text.class::isInstance)
                .map(Text.class::cast)
                .toList();
        for (int i = 0; i < texts.size(); i++) {
            for (int j = i + 1; j < texts.size(); j++) {
                double air = 0.4 * Math.min(texts.get(i).height(), texts.get(j).height()) - 1e-9;
                Extent a = texts.get(i).extent().grow(air);
                Extent b = texts.get(j).extent();
                boolean apart =
                        a.maxX() <= b.minX() || b.maxX() <= a.minX() || a.maxY() <= b.minY() || b.maxY() <= a.minY();
                assertTrue(apart, texts.get(i).string() + " and " + texts.get(j).string());
            }
        }
    }

    /** The page of a pick list has the floor alone, in the same place, and the words as a caption. */
    @Test
    void withoutWordsTheFloorStaysWhereItIs() {
        Sheet bare = new FloorDrafting().drawWithoutWords(DemoPlan.plan());
        assertTrue(bare.marks().stream().noneMatch(m -> m.layer() == Layer.TITLE));
        List<Layer> floor = List.of(Layer.FLOOR, Layer.KEEP_OUT, Layer.PIPE, Layer.PLATE, Layer.CHANNEL);
        assertTrue(sheet.marks()
                .containsAll(bare.marks().stream()
                        .filter(m -> floor.contains(m.layer()))
                        .toList()));
        assertTrue(bare.extent().minY() > sheet.extent().minY());
        List<String> notes =
                on(Layer.NOTE).stream().flatMap(FloorDraftingTest::strings).toList();
        String words = String.join(" ", notes).replaceAll(" +", " ");
        for (String line : FloorDrafting.caption(DemoPlan.plan())) {
            assertTrue(words.contains(line), () -> line + " is not in " + words);
        }
    }

    /** All seven runs are long enough for an arrow; the first goes down, the second to the right. */
    @Test
    void arrowsShowTheFlow() {
        List<Arrow> arrows = on(Layer.NOTE).stream()
                .filter(Arrow.class::isInstance)
                .map(Arrow.class::cast)
                .toList();
        assertEquals(-90, arrows.get(0).angle(), 1e-9);
        assertEquals(0, arrows.get(1).angle(), 1e-9);
        assertEquals(7 + 2, arrows.size(), "and two of the axes");
    }

    private List<Shape> on(Layer layer) {
        return sheet.marks().stream()
                .filter(m -> m.layer() == layer)
                .map(Mark::shape)
                .toList();
    }

    private static Stream<String> strings(Shape shape) {
        if (shape instanceof Paragraph p) {
            return p.lines().stream();
        }
        return shape instanceof Text t ? Stream.of(t.string()) : Stream.empty();
    }

    private static void near(Extent wanted, Extent found) {
        assertEquals(wanted.minX(), found.minX(), 1e-6);
        assertEquals(wanted.minY(), found.minY(), 1e-6);
        assertEquals(wanted.maxX(), found.maxX(), 1e-6);
        assertEquals(wanted.maxY(), found.maxY(), 1e-6);
    }
}
