package org.runbend.export.dxf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.DemoSheet;

class DxfBackendTest {
    private final byte[] file = DxfBackend.bytes(DemoSheet.sheet());

    @TempDir
    Path folder;

    /** ezdxf's audit neither complains nor mends; counts per layer are those of the demo sheet. */
    @Test
    void ezdxfReadsAllWithoutMending() throws IOException {
        List<String> facts = OutsideReader.ezdxf(written());
        assertTrue(facts.containsAll(List.of("version AC1015", "errors 0", "fixes 0", "insunits 4", "measurement 1")));
        List<String> counts = facts.stream().filter(f -> f.startsWith("count")).toList();
        assertEquals(
                List.of(
                        "count CHANNEL LWPOLYLINE 1",
                        "count DIMENSION DIMENSION 3",
                        "count FLOOR LWPOLYLINE 1",
                        "count KEEP_OUT CIRCLE 1",
                        "count NOTE MTEXT 1",
                        "count NOTE SOLID 1",
                        "count NOTE TEXT 2",
                        "count PIPE LWPOLYLINE 1",
                        "count PLATE LWPOLYLINE 1",
                        "count SCREW CIRCLE 1",
                        "count SENSOR ARC 1",
                        "count TITLE TEXT 1",
                        "count UNHEATED LWPOLYLINE 1"),
                counts);
    }

    /** The pipe is one open polyline of 5 lines and 6 arcs of r = 75; the 270 degree arc (r = 40) comes in two parts. */
    @Test
    void ezdxfSeesArcsAsArcs() throws IOException {
        List<String> facts = OutsideReader.ezdxf(written());
        assertTrue(facts.contains("parts PIPE open 5 6 r=75.000 bulge<=1"), facts::toString);
        assertTrue(facts.contains("parts CHANNEL closed 3 2 r=40.000 bulge<=1"), facts::toString);
    }

    @Test
    void dimensionsHaveTheirOwnPictureAndMeasure() throws IOException {
        List<String> facts = OutsideReader.ezdxf(written());
        assertTrue(facts.contains("dimension 1200.000 3 1200"), facts::toString);
        assertTrue(facts.contains("dimension 40.000 3 40"), facts::toString);
    }

    @Test
    void foreignTextComesBackHarmless() throws IOException {
        List<String> facts = OutsideReader.ezdxf(written());
        assertTrue(facts.contains("text 'drain \\xd8 60'"), facts::toString);
        assertTrue(facts.contains("text 'seen from above\\ndoor: \\u017b\\xf3\\u0142w'"), facts::toString);
        assertTrue(facts.stream().noneMatch(f -> f.contains("%%")), facts::toString);
    }

    @Test
    void gdalReadsEveryLayer() throws IOException {
        String summary = OutsideReader.run("ogrinfo", "-al", "-q", written().toString());
        for (String layer : List.of("FLOOR", "PIPE", "CHANNEL", "DIMENSION", "NOTE", "TITLE", "KEEP_OUT")) {
            assertTrue(summary.contains("Layer (String) = " + layer), layer);
        }
    }

    @Test
    void isAsciiAndAlikeEveryTime() {
        for (byte b : file) {
            assertTrue(b == '\n' || (b >= ' ' && b < 127));
        }
        assertArrayEquals(file, DxfBackend.bytes(DemoSheet.sheet()));
    }

    /** The format wants every handle once and the seed above them all. */
    @Test
    void handlesAreUniqueAndBelowTheSeed() {
        List<String> lines = new String(file, StandardCharsets.US_ASCII).lines().toList();
        TreeSet<Long> handles = new TreeSet<>();
        long seed = 0;
        for (int i = 0; i < lines.size(); i += 2) {
            boolean isSeed = i > 1 && lines.get(i - 1).equals("$HANDSEED");
            if (isSeed) {
                seed = Long.parseLong(lines.get(i + 1), 16);
            } else if (lines.get(i).equals("5") || lines.get(i).equals("105")) {
                assertTrue(handles.add(Long.parseLong(lines.get(i + 1), 16)), lines.get(i + 1));
            }
        }
        assertTrue(handles.size() > 50);
        assertTrue(seed > handles.last());
    }

    @Test
    void documentMayBeTakenTwice() {
        DxfDocument document = new DxfDocument();
        document.model().line("0", 0, 0, 1, 1);
        assertArrayEquals(document.toBytes(), document.toBytes());
    }

    @Test
    void controlCharactersAndEscapesAreNeutral() {
        assertEquals("a b c", DxfText.line("a\nb\rc"));
        assertEquals("% %c", DxfText.line("%%c"));
        assertEquals("% % %", DxfText.line("%%%"));
        assertEquals("/U+0041", DxfText.line("\\U+0041"));
        assertEquals("\\U+D83D\\U+DE00", DxfText.line("\uD83D\uDE00"));
        assertEquals("(/Farial;)", DxfText.multiLine("{\\Farial;}"));
        assertFalse(DxfText.line("x".repeat(9000)).length() > 1900);
    }

    private Path written() throws IOException {
        return Files.write(folder.resolve("demo.dxf"), file);
    }
}
