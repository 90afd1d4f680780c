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
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.optimizer.plan.KitPlan;

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
                "seen from above",
                "window",
                "2.075 39.00 39.00",
                "EUR 51.30",
                "Total, 2.7 kg",
                "loop A: 8357",
                "1 \u00d7 1200 (P2)",
                "1 \u00d7 1200 (P2) 1000",
                "A run 3 at 100 mm + A run 4 at 150 mm",
                "6.19 m 5.25 m 2 4 8.36 m",
                "64.8 % of the straight pipe",
                "Plate SP2 is named in the job but not used: a narrower one is named.",
                "fuel and gas lines",
                "Pressure-test the loop")) {
            assertTrue(text.contains(part), () -> part + " is not in: " + text);
        }
        assertEquals(-1, text.indexOf("\u00b0C"), "no figures of heat");
        assertEquals(-1, text.indexOf("21.25"), "what the workshop pays for pipe travels with the kit");
        assertEquals(-1, text.indexOf("cannot be had for less"), "costs travel with the kit");
    }

    /** Costs stand on a paper of their own, which says that it stays in the house. */
    @Test
    void costsStayInTheHouse() throws IOException {
        Path file = Files.write(folder.resolve("internal.pdf"), new InternalPaper().bytes(DemoPlan.plan()));
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
        KitPlan plan = DemoPlan.plan();
        return new PickList()
                .bytes(plan, new FloorDrafting(GrooveForm.NONE).drawWithoutWords(plan), FloorDrafting.caption(plan));
    }
}
