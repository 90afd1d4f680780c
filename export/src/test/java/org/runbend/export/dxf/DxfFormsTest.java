package org.runbend.export.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.DemoSheet;

/** R12, paper, blocks and hatches, read back by ezdxf, GDAL and LibreCAD. */
class DxfFormsTest {
    @TempDir
    Path folder;

    /** R12 has no LWPOLYLINE, MTEXT or DIMENSION: chains of vertices, lines and single texts take their places. */
    @Test
    void oldFormHoldsOldEntitiesOnly() throws IOException {
        byte[] file = DxfBackend.bytes(DemoSheet.sheet(), Optional.empty(), DxfVersion.R12);
        List<String> facts = facts(file);
        assertTrue(facts.contains("version AC1009 errors 0 fixes 0"), facts::toString);
        String model = facts.stream()
                .filter(f -> f.startsWith("layout Model"))
                .findFirst()
                .orElseThrow();
        assertEquals("layout Model ARC=1 CIRCLE=2 LINE=9 POLYLINE=5 SOLID=7 TEXT=8", model);
        String text = new String(file, StandardCharsets.US_ASCII);
        assertFalse(text.contains("AcDb"));
        assertTrue(text.contains("door: Zolw"), "letters lose their accents");
        assertTrue(text.contains("drain O 60"));
    }

    @Test
    void othersReadTheOldForm() throws IOException {
        Path file = write(DxfBackend.bytes(DemoSheet.sheet(), Optional.empty(), DxfVersion.R12));
        String summary = OutsideReader.run("ogrinfo", "-al", "-q", file.toString());
        for (String layer : List.of("FLOOR", "PIPE", "CHANNEL", "DIMENSION", "NOTE", "TITLE")) {
            assertTrue(summary.contains("Layer (String) = " + layer), layer);
        }
        OutsideReader.run("librecad", "dxf2pdf", "-a", file.toString());
        assertTrue(Files.size(file.resolveSibling("form.pdf")) > 2000);
    }

    /** A unit circle at (1, 0) in a block, put at (100, 50), 10 times as large and a quarter turned: centre (100, 60). */
    @Test
    void blocksAreInserted() throws IOException {
        DxfDocument document = new DxfDocument();
        DxfBlock hole = document.block("HOLE");
        hole.circle("0", 1, 0, 1);
        document.model().insert("0", hole, 100, 50, 10, 90);
        List<String> facts = facts(document.toBytes());
        assertTrue(facts.contains("version AC1015 errors 0 fixes 0"), facts::toString);
        assertTrue(facts.contains("inserted circle 100.000 60.000 r=10.000"), facts::toString);
        assertThrows(IllegalArgumentException.class, () -> document.block("hole"));
        assertThrows(IllegalArgumentException.class, () -> hole.insert("0", hole, 0, 0, 1, 0));
    }

    @Test
    void hatchesKeepTheirHolesAndArcs() throws IOException {
        DxfDocument document = new DxfDocument();
        List<DxfVertex> square = List.of(
                new DxfVertex(0, 0, 0), new DxfVertex(10, 0, 0), new DxfVertex(10, 10, 0), new DxfVertex(0, 10, 0));
        List<DxfVertex> round = List.of(new DxfVertex(4, 5, 1), new DxfVertex(6, 5, 1));
        document.model().hatch("0", List.of(square, round));
        List<String> facts = facts(document.toBytes());
        assertTrue(facts.contains("version AC1015 errors 0 fixes 0"), facts::toString);
        assertTrue(facts.contains("hatch 1 [4, 2] ['1.000', '1.000']"), facts::toString);
        assertThrows(IllegalArgumentException.class, () -> document.model()
                .hatch("0", List.of(List.of(new DxfVertex(1, 1, 0)))));
    }

    /** A window of 200 x 100 mm at 1:10 shows 1000 mm of height. */
    @Test
    void paperShowsTheModel() throws IOException {
        DxfDocument document = new DxfDocument();
        document.model().line("0", 0, 0, 2000, 1000);
        DxfBlock paper = document.paper("A4", 297, 210);
        paper.polyline("0", List.of(new DxfVertex(10, 10, 0), new DxfVertex(287, 10, 0)), false);
        document.view("0", 20, 50, 220, 150, 1000, 500, 10);
        List<String> facts = facts(document.toBytes());
        assertTrue(facts.contains("version AC1015 errors 0 fixes 0"), facts::toString);
        assertTrue(facts.contains("layout Model LINE=1"), facts::toString);
        assertTrue(facts.contains("layout A4 LWPOLYLINE=1 VIEWPORT=2"), facts::toString);
        assertTrue(facts.contains("view 200 x 100 of 1000 500, height 1000"), facts::toString);
        assertThrows(IllegalStateException.class, () -> document.paper("A3", 420, 297));
    }

    private List<String> facts(byte[] file) throws IOException {
        Path script = folder.resolve("read_forms.py");
        try (InputStream in = OutsideReader.class.getResourceAsStream("read_forms.py")) {
            Files.write(script, in.readAllBytes());
        }
        return OutsideReader.python(script, List.of("ezdxf"), write(file).toString())
                .lines()
                .toList();
    }

    private Path write(byte[] file) throws IOException {
        return Files.write(folder.resolve("form.dxf"), file);
    }
}
