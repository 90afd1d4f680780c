package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code guide}: the drawing as others read it, the tiles as they print, what it says and refuses. */
class GuideCommandTest {
    @TempDir
    Path folder;

    private CommandRun guide(Path job, String... more) {
        String[] args = new String[4 + more.length];
        List<String> first = List.of(
                "guide", job.toString(), "--out", folder.resolve("g.dxf").toString());
        for (int i = 0; i < args.length; i++) {
            args[i] = i < 4 ? first.get(i) : more[i - 4];
        }
        return CommandRun.of(args);
    }

    @ParameterizedTest
    @ValueSource(strings = {"camper.yaml", "cabin-boat.yaml", "closet.yaml", "pottery-pillars.yaml"})
    void everyExampleHasAGuide(String job) throws IOException {
        CommandRun run = guide(PlannedKits.EXAMPLES.resolve(job));
        assertEquals(0, run.code(), run.err());
        byte[] drawing = Files.readAllBytes(folder.resolve("g.dxf"));
        byte[] paper = Files.readAllBytes(folder.resolve("g.pdf"));
        assertEquals(0, guide(PlannedKits.EXAMPLES.resolve(job)).code(), "our own files are replaced");
        assertArrayEquals(drawing, Files.readAllBytes(folder.resolve("g.dxf")));
        assertArrayEquals(paper, Files.readAllBytes(folder.resolve("g.pdf")));
    }

    /** On Letter, 612 x 792 points, with inches beside: bush 17 is 11/16", groove 16.5 deep 5/8". The drawing is the same. */
    @Test
    void guideOnLetterInInches() throws IOException {
        Path camper = PlannedKits.EXAMPLES.resolve("camper.yaml");
        assertEquals(0, guide(camper).code());
        byte[] drawing = Files.readAllBytes(folder.resolve("g.dxf"));
        CommandRun run = guide(camper, "--paper", "letter", "--units", "imperial");
        assertEquals(0, run.code(), run.err());
        assertArrayEquals(drawing, Files.readAllBytes(folder.resolve("g.dxf")));
        String paper = folder.resolve("g.pdf").toString();
        assertTrue(OutsideReader.run("pdfinfo", paper).contains("612 x 792"), paper);
        String text = OutsideReader.run("pdftotext", "-raw", paper, "-").replaceAll("\\s+", " ");
        assertTrue(text.contains("Guide bush 17 mm (11/16\") outside"), text);
        assertTrue(text.contains("groove 16.5 mm (5/8\") deep"), text);
    }

    /**
     * ezdxf reads the camper's guide and shapely sweeps bush 17 and cutter 12: the cut along a line of length L is
     * w L + pi w^2 / 4 (Pappus), with w 20 at bends of R 75 and 17.5 on the straight, and the pocket is a disc of 32.
     */
    @Test
    void othersSweepTheSameChannels() throws IOException {
        assertEquals(0, guide(PlannedKits.EXAMPLES.resolve("camper.yaml")).code());
        List<double[]> cuts = OutsideReader.python(
                        OutsideReader.resource(folder, "sweep_guide.py"),
                        List.of("ezdxf", "shapely"),
                        folder.resolve("g.dxf").toString(),
                        "17",
                        "12")
                .lines()
                .map(l -> Arrays.stream(l.split(" ", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        assertEquals(6, cuts.size(), "four slots and two hand holes");
        double straight = cuts.stream()
                .filter(c -> Math.abs(c[2] - 17.5) < 0.01)
                .findFirst()
                .orElseThrow()[1];
        assertTrue(straight >= 400, () -> "straight slot cuts " + straight + " mm");
        for (double area : List.of(
                (straight - 17.5) * 17.5 + Math.PI * 17.5 * 17.5 / 4,
                20 * (140 + Math.PI * 75) + Math.PI * 100,
                20 * (140 + Math.PI * 75 / 2) + Math.PI * 100,
                Math.PI * 256)) {
            assertTrue(
                    cuts.stream().anyMatch(c -> Math.abs(c[0] - area) < 0.001 * area),
                    () -> "no slot cuts " + area + " mm2");
        }
    }

    /** At 254 dots an inch, 10 a millimetre, the bar of a tile is 1000 dots long. */
    @Test
    void tilesPrintInFullSize() throws IOException {
        assertEquals(0, guide(PlannedKits.EXAMPLES.resolve("camper.yaml")).code());
        try (PDDocument document = Loader.loadPDF(folder.resolve("g.pdf").toFile())) {
            PDFRenderer renderer = new PDFRenderer(document);
            assertTrue(document.getNumberOfPages() > 4);
            BufferedImage tile = renderer.renderImageWithDPI(1, 254);
            // the bar lies 14 to 16 mm under the top of the page
            assertEquals(1000, longestDark(tile, 150), 3);
        }
    }

    private static int longestDark(BufferedImage image, int y) {
        int longest = 0;
        int run = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            run = (image.getRGB(x, y) & 0xFF) < 128 ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    @Test
    void whatCannotBeIsOneLine() throws IOException {
        Path shop = folder.resolve(PlannedKits.CATALOG);
        Files.writeString(
                shop,
                Files.readString(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG))
                        .replaceAll("cutters: \\[8, 12\\]", "cutters: [20]"));
        Path job = Files.copy(PlannedKits.EXAMPLES.resolve("camper.yaml"), folder.resolve("camper.yaml"));
        CommandRun run = guide(job);
        assertEquals(2, run.code());
        assertEquals(
                List.of(
                        "catalog: no cutter of routing.cutters goes into a groove 17.5 mm wide; one of at most that is needed"),
                run.err()
                        .lines()
                        .map(l -> l.replaceFirst("^.*?: (?=catalog: no)", ""))
                        .toList());
        assertEquals(2, CommandRun.of("guide", job.toString(), "--out", "g.svg").code());
        Files.writeString(folder.resolve("g.dxf"), "mine");
        CommandRun foreign = guide(PlannedKits.EXAMPLES.resolve("camper.yaml"));
        assertEquals(2, foreign.code());
        assertEquals("mine", Files.readString(folder.resolve("g.dxf")));
    }

    /** A shop's own names, colours and form. */
    @Test
    void layersAreTheShops() throws IOException {
        Files.writeString(
                folder.resolve(PlannedKits.CATALOG),
                Files.readString(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG))
                        + "\nlayers: {form: '{depth}mm-{operation}', hole: {name: INNEN, colour: 5}, note: {name: TEXT}}\n");
        Path job = Files.copy(PlannedKits.EXAMPLES.resolve("camper.yaml"), folder.resolve("camper.yaml"));
        assertEquals(0, guide(job).code());
        String dxf = Files.readString(folder.resolve("g.dxf"));
        assertTrue(dxf.contains("\n12mm-INNEN\n") && dxf.contains("\n12mm-CUT\n") && dxf.contains("\nTEXT\n"), dxf);
    }
}
