package org.runbend.export.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.DemoSheet;
import org.runbend.export.drawing.Extent;
import org.runbend.export.pdf.PdfTable.Column;

class PdfDocumentTest {
    @TempDir
    Path folder;

    @Test
    void sameCallsSameBytes() {
        assertArrayEquals(paper(), paper());
    }

    @Test
    void qpdfFindsNoFault() throws IOException {
        String word = OutsideReader.run("qpdf", "--check", written().toString());
        assertTrue(word.contains("No syntax or stream encoding errors found"), word);
    }

    /** poppler lists each font with emb, sub, uni; both must say yes three times. */
    @Test
    void fontsAreEmbedded() throws IOException {
        List<String> fonts = OutsideReader.run("pdffonts", written().toString())
                .lines()
                .skip(2)
                .toList();
        assertEquals(2, fonts.size());
        assertTrue(
                fonts.stream().allMatch(f -> f.contains("yes yes yes") && f.contains("DejaVuSans")), fonts::toString);
    }

    @Test
    void textComesBackWhole() throws IOException {
        String text = OutsideReader.run("pdftotext", "-layout", written().toString(), "-");
        assertTrue(text.contains("office flow fi fl \u017b\u00f3\u0142w \u0416 \u00bd \u2192 \u2610"), text);
        assertTrue(text.contains("mark \uFFFD here"), text);
        assertTrue(text.contains("page 1 of 3"), text);
        assertTrue(text.contains("page 3 of 3"), text);
        assertEquals(3, text.split("quantity", -1).length - 1, "the table's head stands on every page");
        assertTrue(text.contains("item 79"), text);
        assertTrue(text.contains("Reading room caf\u00e9"), text);
    }

    @Test
    void titleAndLanguageAreSet() throws IOException {
        String info = OutsideReader.run("pdfinfo", written().toString());
        assertTrue(info.contains("Title:           Pick list caf\u00e9"), info);
        assertTrue(!info.contains("CreationDate"), info);
    }

    /** No line is longer than the room, and nothing but blanks is lost. */
    @Test
    void wrapKeepsLetters() {
        try (PdfDocument document = new PdfDocument("t", "en", Paper.A4.upright())) {
            String text = "a few words and one unbreakablewordthatistoolongforanylineofthistest\nsecond";
            List<String> lines = document.wrap(text, TextStyle.BODY, 30);
            assertTrue(lines.stream().allMatch(l -> document.width(l, TextStyle.BODY) <= 30), lines::toString);
            assertEquals(text.replaceAll("\\s", ""), String.join("", lines).replaceAll("\\s", ""));
            assertEquals("second", lines.get(lines.size() - 1));
        }
    }

    /** Near the foot of the page a heading stands on the page where the table under it begins. */
    @Test
    void headingGoesWithItsTable() throws IOException {
        for (int before = 37; before < 49; before += 2) {
            PdfDocument document = new PdfDocument("t", "en", Paper.A4.upright());
            PdfFlow flow = new PdfFlow(document);
            for (int i = 0; i < before; i++) {
                flow.paragraph("line " + i);
            }
            PdfTable table = new PdfTable(Column.left("first column", 1));
            for (int i = 0; i < 6; i++) {
                table.row("row " + i);
            }
            flow.heading("The heading").table(table);
            Path file = Files.write(folder.resolve("kept.pdf"), document.toBytes());
            String text = OutsideReader.run("pdftotext", "-layout", file.toString(), "-");
            String page = text.substring(text.indexOf("The heading")).split("\f", -1)[0];
            assertTrue(page.contains("row 5"), before + " lines before: " + text);
        }
    }

    /** Hand-worked for 100 mm of room: shares give 10, 10, 80; the first needs 18 and gets it from the last, which has room. */
    @Test
    void columnsHaveRoomForTheirWords() {
        PdfTable table = new PdfTable(Column.left("a", 1), Column.left("b", 1), Column.left("c", 8));
        List<Double> widths = table.widths(100, c -> c == 0 ? 18 : c == 1 ? 10 : 40);
        assertEquals(List.of(18.0, 10.0, 72.0), widths);
        assertEquals(List.of(10.0, 10.0, 80.0), table.widths(100, c -> 90), "no room to share: as the shares say");
    }

    /** A title too long for one line at the foot goes on in a second one; a longer one says that it does. */
    @Test
    void longFooterIsWhole() throws IOException {
        String title = "floor of the workshop behind the old mill ".repeat(3).strip();
        PdfDocument document = new PdfDocument("t", "en", Paper.A4.upright()).footer("order K-1, " + title);
        new PdfFlow(document).paragraph("words");
        Path file = Files.write(folder.resolve("foot.pdf"), document.toBytes());
        String text =
                OutsideReader.run("pdftotext", "-raw", file.toString(), "-").replaceAll("\\s+", " ");
        assertTrue(text.contains(title), text);
        document = new PdfDocument("t", "en", Paper.A4.upright()).footer(title + " " + title + " " + title);
        new PdfFlow(document).paragraph("words");
        file = Files.write(folder.resolve("foot.pdf"), document.toBytes());
        assertTrue(OutsideReader.run("pdftotext", "-raw", file.toString(), "-").contains("\u2026"));
    }

    /** Hand-worked: 3100 x 1700 into 180 x 100: 1:17.2 and 1:17; the next round figure is 1:20. */
    @Test
    void roundScale() {
        assertEquals(20, Placement.roundFigure(17.2222), 1e-12);
        Placement placement = Placement.scaled(new Extent(0, 0, 3100, 1700), new Box(0, 0, 180, 100), 1.0 / 20);
        assertEquals(1.0 / 20, placement.scale(), 1e-12);
        assertEquals(90, placement.toPage(new Extent(0, 0, 3100, 1700).centre()).x(), 1e-9);
    }

    private Path written() throws IOException {
        return Files.write(folder.resolve("paper.pdf"), paper());
    }

    /** Three pages: drawing, text, a table of 80 rows. */
    static byte[] paper() {
        PdfDocument document =
                new PdfDocument("Pick list caf\u00e9", "en", Paper.A4.upright()).footer("HF-1042, revision B");
        PdfFlow flow = new PdfFlow(document);
        flow.title("Pick list HF-1042").paragraph("office flow fi fl \u017b\u00f3\u0142w \u0416 \u00bd \u2192 \u2610");
        flow.paragraph("mark \uD83E\uDDFF here\tand\u0007 there")
                .drawing(DemoSheet.sheet(), 110)
                .heading("Parts");
        flow.item("1.", 8, "Lay the boards, then turn them over. ".repeat(5));
        PdfTable table = new PdfTable(
                Column.left("item", 4),
                Column.left("what it is", 8),
                Column.right("quantity", 2),
                Column.centre("\u2713", 1));
        for (int i = 0; i < 80; i++) {
            String long1 =
                    i % 9 == 0 ? "a plate with a long description that has to be broken into two lines " : "plate";
            table.row("item " + i, long1, Integer.toString(i * 7), "\u2610");
        }
        flow.table(table.strongRow("total", "", "1 234", ""));
        return document.toBytes();
    }
}
