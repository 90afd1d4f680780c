package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The paper that a customer signs, as another library reads it. */
class ConfirmPaperTest {
    private static final Path EXAMPLES = Path.of("..", "examples");
    /** What is smaller is not read at arm's length (common practice), points. */
    private static final double LEAST_SIZE = 6.5;

    private static final String RECTANGLE = "outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";

    @TempDir
    Path folder;

    static Stream<Path> jobs() throws IOException {
        return ExamplesTest.jobs();
    }

    private byte[] paper(Path job) throws IOException {
        Path out = folder.resolve("confirm.pdf");
        CommandRun run = CommandRun.of("confirm", job.toString(), "--out", out.toString(), "--quiet");
        assertEquals("", run.err());
        assertEquals(0, run.code());
        return Files.readAllBytes(out);
    }

    private byte[] paper(String floor) throws IOException {
        Path catalog = folder.resolve("workshop.yaml");
        if (!Files.exists(catalog)) {
            Files.copy(EXAMPLES.resolve("workshop.yaml"), catalog);
        }
        String text = "job: Floor\norder: T\ncatalog: workshop.yaml\npipe: {product: PX-16}\nplates: {product: SP-1}\n"
                + "floor:\n" + floor.indent(2);
        return paper(Files.writeString(folder.resolve("job.yaml"), text));
    }

    /** A floor with nothing on it has no column of sizes and air, one with a drain has both. */
    @Test
    void noColumnIsEmpty() throws IOException {
        String bare = "outline: [[0, 0], [1500, 0], [1500, 900], [0, 900]]\nport: {at: [0, 400]}\n";
        String words = words(paper(bare));
        assertTrue(words.contains("what distance from side or corner"), words);
        String drain = "keepOut: [{name: drain, kind: drain, circle: {centre: [700, 400], radius: 40}}]\n";
        assertTrue(words(paper(bare + drain)).contains("what size air kept distance from"), words);
    }

    /** All words but the fingerprint at the foot. */
    private static String words(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            return stripper.getText(document)
                    .replaceAll("floor [0-9a-f]{12}", "")
                    .replaceAll("\\s+", " ");
        }
    }

    /**
     * A letter on the page: a box from its base line to the height of a capital, in points.
     *
     * @param text which letter
     * @param size of the font, points
     * @param x where it begins
     * @param y where it begins
     * @param ux direction in which it is read
     * @param uy direction in which it is read
     * @param width along that direction
     */
    private record Letter(String text, double size, double x, double y, double ux, double uy, double width) {
        /** Corners, drawn in by a tenth so that neighbours in a word do not count. */
        double[][] box() {
            double in = 0.1 * width;
            double low = 0.08 * size;
            double high = 0.65 * size;
            double[][] box = new double[4][];
            double[] along = {in, width - in, width - in, in};
            double[] up = {low, low, high, high};
            for (int i = 0; i < 4; i++) {
                box[i] = new double[] {x + along[i] * ux - up[i] * uy, y + along[i] * uy + up[i] * ux};
            }
            return box;
        }

        boolean covers(Letter other) {
            return !apart(box(), other.box()) && !apart(other.box(), box());
        }

        private static boolean apart(double[][] a, double[][] b) {
            for (int i = 0; i < a.length; i++) {
                double nx = a[(i + 1) % a.length][1] - a[i][1];
                double ny = a[i][0] - a[(i + 1) % a.length][0];
                double most = Double.NEGATIVE_INFINITY;
                double least = Double.POSITIVE_INFINITY;
                for (int j = 0; j < 4; j++) {
                    most = Math.max(most, nx * a[j][0] + ny * a[j][1]);
                    least = Math.min(least, nx * b[j][0] + ny * b[j][1]);
                }
                if (least >= most) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Collects the letters of each page. */
    private static final class Letters extends PDFTextStripper {
        private final List<Letter> found = new ArrayList<>();

        @Override
        protected void processTextPosition(TextPosition t) {
            Matrix m = t.getTextMatrix();
            double size = Math.hypot(m.getValue(0, 0), m.getValue(0, 1));
            double ux = m.getValue(0, 0) / size;
            double uy = m.getValue(0, 1) / size;
            if (!t.getUnicode().isBlank()) {
                found.add(new Letter(
                        t.getUnicode(), size, m.getTranslateX(), m.getTranslateY(), ux, uy, widthOf(t, size)));
            }
        }

        /** The width along the line of letters, whichever way that runs. */
        private static double widthOf(TextPosition t, double size) {
            try {
                return t.getFont().getWidth(t.getCharacterCodes()[0]) / 1000 * size;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static List<List<Letter>> letters(byte[] pdf) throws IOException {
        List<List<Letter>> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                Letters letters = new Letters();
                letters.setStartPage(page);
                letters.setEndPage(page);
                letters.getText(document);
                pages.add(letters.found);
            }
        }
        return pages;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void everyLetterCanBeRead(Path job) throws IOException {
        byte[] pdf = paper(job);
        List<List<Letter>> pages = letters(pdf);
        assertEquals(1, pages.size(), "an example has room on one page");
        List<Letter> page = pages.get(0);
        assertTrue(page.size() > 500, "letters " + page.size());
        for (int i = 0; i < page.size(); i++) {
            Letter a = page.get(i);
            assertTrue(a.size() >= LEAST_SIZE, () -> a + " is too small");
            assertTrue(a.x() > 15 && a.y() > 8, () -> a + " is off the page");
            for (int j = i + 1; j < page.size(); j++) {
                Letter b = page.get(j);
                boolean near = Math.abs(a.x() - b.x()) < 40 && Math.abs(a.y() - b.y()) < 40;
                assertFalse(near && a.covers(b), () -> a + " and " + b + " cover each other");
            }
        }
        assertArrayEquals(pdf, paper(job), "the same bytes every time");
        assertTrue(words(pdf).contains("SEEN FROM ABOVE"));
    }

    /** The test above can fail: two letters at one place. */
    @Test
    void lettersOnEachOtherAreSeen() {
        Letter a = new Letter("a", 8, 100, 100, 1, 0, 5);
        assertTrue(a.covers(new Letter("b", 8, 102, 103, 0, 1, 5)));
        assertFalse(a.covers(new Letter("b", 8, 105, 100, 1, 0, 5)));
    }

    /** By hand: 300 from the left, 200 from below; diagonal the root of 2400^2 + 1500^2 = 2830.2. */
    @Test
    void saysWhatTheJobSays() throws IOException {
        String words = words(paper(RECTANGLE + """

                keepOut: [{name: gas <drain>, kind: drain, circle: {centre: [300, 200], radius: 50}, clearance: 60}]
                unheated: [{name: step, polygon: [[900, 0], [1100, 0], [1100, 150], [900, 150]]}]
                marks: [{edge: 1, text: cab}]
                port: {at: [0, 300]}
                """));
        for (String part : List.of(
                "Corners are lettered anticlockwise, seen from above, from A at the lower left.",
                "Over all 2400 across and 1500 up the sheet.",
                "A–C 2830 B–D 2830",
                "gas <drain> \u2300 100 50 200 from A–B, 300 from D–A",
                "step (no heat) 200 \u00d7 150 on A–B, 900 from D–A",
                "on D–A, 300 from A–B",
                "mark: cab on B–C, 750 from A–B",
                "scale 1:20 if printed at 100 %",
                "The middle of the pipe stays 75 mm away from the edge of the floor.",
                "its outline and marks do not",
                "fuel and gas lines",
                "signature")) {
            assertTrue(words.contains(part), () -> part + " is not in: " + words);
        }
    }

    /** The outline is its own mirror image and there is no mark; the port alone tells the two floors apart. */
    @Test
    void aFloorAndItsMirrorImageReadDifferently() throws IOException {
        String left = words(paper(RECTANGLE + "\nport: {at: [0, 700]}"));
        String right = words(paper(RECTANGLE + "\nport: {at: [2400, 700]}"));
        String listed = words(paper("outline: [[2400, 0], [0, 0], [0, 1500], [2400, 1500]]\nport: {at: [2400, 700]}"));
        assertNotEquals(left, right);
        assertEquals(right, listed, "how the corners are listed changes nothing");
        assertTrue(left.contains("on D–A, 700 from A–B"), left);
        assertTrue(right.contains("on B–C, 700 from A–B"), right);
    }

    @Test
    void longListsGoToAnotherPage() throws IOException {
        StringBuilder many = new StringBuilder(RECTANGLE + "\nport: {at: [0, 700]}\nkeepOut:\n");
        for (int i = 0; i < 60; i++) {
            many.append(String.format(
                    Locale.ROOT,
                    "  - {name: bolt of row %d, point: [%d, %d], clearance: 20}\n",
                    i,
                    200 + i % 12 * 180,
                    200 + i / 12 * 250));
        }
        byte[] pdf = paper(many.toString());
        List<List<Letter>> pages = letters(pdf);
        assertTrue(pages.size() > 1, "pages " + pages.size());
        String words = words(pdf);
        assertTrue(words.contains("60 bolt of row 59 point, \u2300 10 5 220 from B–C, 300 from C–D"), words);
    }

    @Test
    void aFileThatIsNoPaperIsNotOverwritten() throws IOException {
        Path job = EXAMPLES.resolve("camper.yaml");
        Path letter = Files.writeString(folder.resolve("letter.txt"), "mine");
        CommandRun run = CommandRun.of("confirm", job.toString(), "--out", letter.toString());
        assertEquals(2, run.code());
        assertEquals(
                letter + ": exists and is no .pdf file; name a new file",
                run.err().strip());
        assertEquals("mine", Files.readString(letter));
        CommandRun nowhere = CommandRun.of(
                "confirm",
                job.toString(),
                "--out",
                folder.resolve("no/where.pdf").toString());
        assertEquals(2, nowhere.code());
        assertTrue(nowhere.err().endsWith("where.pdf: cannot be written\n"), nowhere.err());
    }
}
