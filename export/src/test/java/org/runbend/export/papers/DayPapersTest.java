package org.runbend.export.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.CatalogReader;
import org.runbend.catalog.source.Unit;
import org.runbend.export.OutsideReader;
import org.runbend.export.batch.DayPlanning;
import org.runbend.export.batch.Shop;
import org.runbend.export.data.Day;
import org.runbend.export.data.DayKit;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.day.DayCut;
import org.runbend.optimizer.work.Work;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;

/** The papers of a day of twelve orders, read by poppler, veraPDF and zxing. */
class DayPapersTest {
    private static Day day;

    @TempDir
    Path folder;

    @BeforeAll
    static void plan() {
        VeraGreenfieldFoundryProvider.initialise();
        Catalog catalog = CatalogReader.read(Path.of("../examples/workshop.yaml"));
        List<DayKit> kits = new ArrayList<>();
        for (int i = 1; i <= 12; i++) {
            kits.add(kit(i));
        }
        Shop shop = new Shop(
                List.of(
                        new Shop.Piece("C7", "PX-16", 1_790_000, 2_400_000, true),
                        new Shop.Piece("O3", "SP-1", 70_000, 70_000, false)),
                List.of(new Shop.Whole("SP-1", 120_000, 3)),
                Map.of("CL-16", 30L));
        day = new DayPlanning(catalog, Keeping.USUAL, Work.silent())
                .plan("monday", kits, List.of("o13.yaml: nobody can lay this"), shop);
    }

    /** Orders 3, 6, 9, 12 travel in two boxes, and order 5 gets its coil of thin pipe whole. */
    private static DayKit kit(int i) {
        String order = "HF-" + (100 + i);
        boolean whole = i == 5;
        String pipe = whole ? "PX-10" : "PX-16";
        List<DayKit.Cut> cuts = new ArrayList<>();
        cuts.add(new DayKit.Cut(
                true,
                pipe,
                new DayCut(order, "loop A", whole ? 900_000 : 1_500_000 + i * 11_000),
                whole ? 1_000_000 : 2_500_000,
                "C1",
                "loop A"));
        for (int p = 0; p < 5; p++) {
            long length = p < 2 ? 120_000 : 30_000 + (i % 3) * 9_000 + p * 1_000;
            cuts.add(new DayKit.Cut(
                    false,
                    "SP-1",
                    new DayCut(order, "A run " + p + " at 100 mm", length),
                    120_000,
                    "P" + p,
                    p < 2 ? "P" + (p + 1) : "P3" + "abc".charAt(p - 2)));
        }
        int boxes = i % 3 == 0 ? 2 : 1;
        return new DayKit(
                order,
                "f".repeat(63) + i % 10,
                "A floor",
                boxes,
                Map.of(pipe, List.of(1), "SP-1", List.of(boxes)),
                cuts,
                whole ? Set.of("PX-10") : Set.of(),
                List.of(new DayKit.Goods("CL-16", "Clamp 16", "piece", 20), new DayKit.Goods("XX-1", "Odd", "set", 1)),
                List.of());
    }

    @Test
    void everyCutOrderAndLabelIsOnTheSheet() throws IOException {
        byte[] pdf = DaySheet.bytes(day, Paper.A4, Unit.MM);
        String text = text(pdf);
        String flat = text.replaceAll("\\s+", " ");
        for (Day.Use u : day.uses()) {
            for (DayCut c : u.cuts()) {
                String piece = day.piece(c) + ": " + Decimals.of(c.length() / 100.0, 1) + " from " + u.number();
                assertTrue(flat.contains(piece), () -> piece + " is not in " + flat);
                assertTrue(flat.contains(day.box(c, u.product())), () -> c + " has no box in " + flat);
            }
            u.restName()
                    .ifPresent(n -> assertTrue(
                            Pattern.compile("\\u2610 " + Pattern.quote(n) + " " + u.product() + " "
                                            + Decimals.of(u.rest() / 100.0, 1) + " (left|whole|itself)")
                                    .matcher(flat)
                                    .find(),
                            () -> n + " is not in " + flat));
        }
        assertTrue(day.uses().stream().anyMatch(u -> u.restName().isPresent() && u.id().isEmpty()), "a new label");
        assertTrue(flat.contains("Left out: o13.yaml: nobody can lay this"), flat);
        assertTrue(flat.contains("HF-103 box 2 of 2"), flat);
        assertTrue(flat.contains("C7: PX-16 of 24000 from the shelf"), flat);
        assertTrue(flat.contains("(6100 of it kept for others or in doubt), kept as C7"), flat);
        assertTrue(flat.contains("1000 left, which goes into the box too"), flat);
        assertTrue(flat.contains("day monday, plan " + day.fingerprint().substring(0, 12)), flat);
        PaperSetTest.assertArchived("day-sheet.pdf", pdf);
        assertEquals(
                "day monday plan " + day.fingerprint().substring(0, 12),
                PaperSetTest.code(pdf, 210 - 15 - 20, 297 - 15 - 20, 20));
    }

    /** Each coil and plate, and each piece of one, is a rectangle as long as it should be at the scale that is told. */
    @Test
    void barsAreToScale() throws IOException {
        byte[] pdf = DaySheet.bytes(day, Paper.A4, Unit.MM);
        List<Double> scales = Pattern.compile(" 1 : ([\\d.]+)")
                .matcher(text(pdf).replaceAll("\\s+", " "))
                .results()
                .map(m -> Double.parseDouble(m.group(1)))
                .toList();
        List<List<Day.Use>> groups = day.groups();
        assertEquals(groups.size(), scales.size());
        assertTrue(groups.stream().anyMatch(g -> g.size() > 2), "some are cut alike");
        Map<Double, Long> wanted = new TreeMap<>();
        for (int i = 0; i < groups.size(); i++) {
            Day.Use one = groups.get(i).get(0);
            double scale = scales.get(i) * 100;
            wanted.merge(one.there() / scale, 2L, Long::sum); // filled, then framed
            one.cuts().forEach(c -> wanted.merge(c.length() / scale, 2L, Long::sum));
        }
        List<PdfMarks> pages = PdfMarks.of(pdf);
        wanted.forEach((width, least) -> assertTrue(
                pages.stream().mapToLong(p -> p.rectanglesOfWidth(width)).sum() >= least,
                () -> "bars of " + width + " mm: " + least + " wanted"));
    }

    @Test
    void whatIsBought() throws IOException {
        byte[] pdf = BuyList.bytes(day, Paper.LETTER, Unit.IN);
        String text = text(pdf);
        String flat = text.replaceAll("\\s+", " ");
        for (Day.Wanted w : day.wanted()) {
            String row = w.product() + " " + Decimals.of(w.length() / 100.0, 1);
            assertTrue(
                    Pattern.compile(Pattern.quote(row) + " \\([^)]*\\\"\\) " + w.needed() + " "
                                    + (w.needed() - w.toBuy()) + " " + w.toBuy() + " ")
                            .matcher(flat)
                            .find(),
                    () -> row + " is not in " + flat);
        }
        assertEquals(
                3, day.wanted().stream().mapToLong(w -> w.needed() - w.toBuy()).sum(), "three plates lie there");
        assertTrue(flat.contains("CL-16 Clamp 16 240 piece 30 210"), flat);
        assertTrue(Pattern.compile("XX-1 Odd 12 set(?! \\d)").matcher(flat).find(), flat);
        PaperSetTest.assertArchived("buy-list.pdf", pdf);
        String info = OutsideReader.run("pdfinfo", folder.resolve("paper.pdf").toString());
        assertTrue(info.contains("612 x 792 pts (letter)"), info);
    }

    private String text(byte[] pdf) throws IOException {
        Path file = Files.write(folder.resolve("paper.pdf"), pdf);
        assertTrue(
                OutsideReader.run("qpdf", "--check", file.toString()).contains("No syntax or stream encoding errors"));
        return OutsideReader.run("pdftotext", "-layout", file.toString(), "-");
    }
}
