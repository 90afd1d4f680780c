package org.runbend.export.papers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.DemoPlan;
import org.runbend.export.OutsideReader;
import org.runbend.export.pdf.Paper;

class PickListTest {
    @TempDir
    Path folder;

    @Test
    void qpdfFindsNoFaultAndFontsAreEmbedded() throws IOException {
        Path file = Files.write(folder.resolve("pick-list.pdf"), paper());
        String word = OutsideReader.run("qpdf", "--check", file.toString());
        assertTrue(word.contains("No syntax or stream encoding errors found"), word);
        List<String> fonts =
                OutsideReader.run("pdffonts", file.toString()).lines().skip(2).toList();
        assertTrue(!fonts.isEmpty() && fonts.stream().allMatch(f -> f.contains("yes yes yes")), fonts::toString);
    }

    /** What the plan says stands on paper; amounts by hand: 3900 + 990 + 48 x 5 = 5130. */
    @Test
    void saysWhatThePlanSays() throws IOException {
        Path file = Files.write(folder.resolve("pick-list.pdf"), paper());
        String text =
                OutsideReader.run("pdftotext", "-layout", file.toString(), "-").replaceAll("\\s+", " ");
        for (String part : List.of(
                "Pick list HF-1042",
                "Reading room <caf\u00e9>",
                "for =cmd|x, date 12 March, from Kettle & Cope",
                "1 box, 2.7 kg without packing",
                "1 coil 2.075 2.075 39.00",
                "48 piece 0.096 2.671 2.40",
                "Price of all: 51.30 EUR",
                "loop A: 8357",
                "SP 1000 1 P2",
                "all 3",
                "Back on the shelf, not into the box: P2r, 197; P3r, 397.",
                "packed by")) {
            assertTrue(text.contains(part), () -> part + " is not in: " + text);
        }
        assertEquals(-1, text.indexOf("\u00b0C"), "no figures of heat");
        assertEquals(-1, text.indexOf("21.25"), "what the workshop pays for pipe travels with the kit");
        assertEquals(-1, text.indexOf("cannot be had for less"), "costs travel with the kit");
    }

    /** Costs stand on a paper of their own, which says that it stays in the house. */
    @Test
    void costsStayInTheHouse() throws IOException {
        Path file = Files.write(folder.resolve("internal.pdf"), new InternalPaper().bytes(DemoPlan.plan(), Paper.A4));
        String text =
                OutsideReader.run("pdftotext", "-layout", file.toString(), "-").replaceAll("\\s+", " ");
        for (String part : List.of(
                "this paper does not travel with the kit",
                "cannot be had for less than 9.00 EUR",
                "Pipe costs 21.25 EUR. It is proved that it cannot be had for less.")) {
            assertTrue(text.contains(part), () -> part + " is not in: " + text);
        }
    }

    @Test
    void sameBytesEveryTime() {
        assertArrayEquals(paper(), paper());
    }

    private static byte[] paper() {
        return PickList.bytes(DemoPlan.plan(), new PaperForm(Paper.A4, true));
    }
}
