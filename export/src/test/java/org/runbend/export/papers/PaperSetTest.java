package org.runbend.export.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.catalog.product.LabelSheet;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;
import org.runbend.export.PlannedExamples;
import org.runbend.export.data.CutSheet;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.folder.KitFiles;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.Quoting;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** The papers of every example, held against kit.json by readers of others: poppler, qpdf, veraPDF, zxing. */
class PaperSetTest {
    private static final List<String> PAPERS = List.of(
            "pick-list.pdf", "cut-sheet.pdf", "labels.pdf", "fitting-sheet.pdf", "confirm.pdf", "full-size.pdf");

    @TempDir
    Path folder;

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    @BeforeAll
    static void startValidator() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    /** One pass over all that an example's papers promise: they are written once, as that is the dearest part. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void papersHoldWhatTheyPromise(Path job) throws IOException {
        KitPlan plan = PlannedExamples.plan(job);
        Map<String, byte[]> files = KitFiles.of(
                plan,
                Optional.empty(),
                Optional.empty(),
                new KitFiles.DrawingForm(DxfVersion.R2000, true, false),
                new KitFiles.PaperWish(PaperForm.USUAL, Optional.of(FullSizePaper.Page.PLOTTER)),
                Map.of());
        JsonIn kit = JsonIn.read(Files.write(folder.resolve("kit.json"), files.get("kit.json")));
        List<String> papers = new ArrayList<>(PAPERS);
        files.keySet().stream().filter("heat.pdf"::equals).forEach(papers::add);
        for (String name : papers) {
            Path file = Files.write(folder.resolve(name), files.get(name));
            assertArchived(name, files.get(name));
            assertTrue(
                    OutsideReader.run("qpdf", "--check", file.toString())
                            .contains("No syntax or stream encoding errors found"),
                    name);
        }
        String picked = text("pick-list.pdf");
        everyItemIsPicked(kit, picked);
        whatIsBoughtElsewhereIsTold(kit, flat(picked));
        boxesAddUp(kit, flat(picked));
        barsAreToScale(plan, files.get("cut-sheet.pdf"));
        everyPieceHasOneLabel(kit, text("labels.pdf"));
        loopIsRebuilt(kit, text("fitting-sheet.pdf").replaceAll("\\s*\\([^()]*\"\\)", ""));
        platesAreTold(kit, text("fitting-sheet.pdf"));
        pipeAddsUp(kit, flat(text("fitting-sheet.pdf").replaceAll("\\s*\\([^()]*\"\\)", "")));
        limitIsKept(kit, flat(text("fitting-sheet.pdf")));
        if (files.containsKey("heat.pdf")) {
            oneLimitIsOneNumber(kit, flat(text("fitting-sheet.pdf")), flat(text("heat.pdf")));
            noForbiddenHeatIsPromised(plan, kit, flat(text("heat.pdf")));
        }
        thickerInsulationIsTold(plan);
        coolantIsToldOf(plan);
        String plan12 = "order " + kit.at("order").text() + " plan "
                + kit.at("fingerprint").text().substring(0, 12);
        assertEquals(plan12, code(files.get("pick-list.pdf"), 210 - 15 - 20, 297 - 15 - 20, 20));
        LabelSheet sheet = plan.job().catalog().packing().labels();
        double low = 297 - sheet.top() - sheet.height() + (sheet.height() - 19) / 2;
        assertTrue(code(files.get("labels.pdf"), sheet.left() + sheet.width() - 2.5 - 19, low, 19)
                .startsWith(plan12 + " piece Box 1"));
    }

    /** The weight at the head is the sum of those at the boxes, with packing where there is some; the last page is more than signatures. */
    private static void boxesAddUp(JsonIn kit, String text) {
        boolean inCartons = kit.at("parcels").list().stream().allMatch(p -> p.has("carton"));
        double all = numbers(
                        text,
                        "box(?:es)?(?: \\([^)]*\\))?, ([0-9.]+) kg " + (inCartons ? "with" : "without") + " packing")
                .get(0);
        double boxes = Pattern.compile("Box(?: [0-9]+ of [0-9]+)?(?:: [^,]*)?, ([0-9.]+) kg")
                .matcher(text)
                .results()
                .mapToDouble(m -> Double.parseDouble(m.group(1)))
                .sum();
        assertEquals(all, boxes, 1e-9);
        String last = text.substring(text.lastIndexOf("page ", text.lastIndexOf("packed by")) + 1);
        assertTrue(last.contains("Not in the box"), last);
    }

    /** Whoever gets coolant for the pipe alone reads that the rest of the circuit takes more. */
    private static void coolantIsToldOf(KitPlan plan) {
        plan.heat()
                .filter(h -> plan.job().heating().orElseThrow().namesCoolant())
                .ifPresent(h -> {
                    String said = plan.notSupplied().get(0);
                    assertTrue(
                            said.contains("the rest of the circuit")
                                    || said.contains("what the circuit holds beside the pipe"),
                            said);
                });
    }

    /** Conduit and screws that the fitting sheet asks for are in the box or told as missing. */
    private static void whatIsBoughtElsewhereIsTold(JsonIn kit, String picked) {
        if (kit.has("sensor") && kit.at("sensor").has("conduitLength")) {
            double metres = kit.at("sensor").at("conduitLength").number() / 1000;
            assertTrue(
                    picked.contains(String.format(Locale.ROOT, ", %.1f m)", Math.ceil(metres * 10 - 1e-9) / 10)),
                    picked);
        }
        if (kit.has("boards") && kit.at("boards").has("fixing")) {
            int screws = kit.at("boards").at("fixing").at("screws").list().size();
            assertTrue(screws == 0 || picked.contains(screws + " screws for the cover"), picked);
        }
    }

    /** A line of the list for each item, its quantity and unit once; each cut of pipe; how many plates of each length. */
    private static void everyItemIsPicked(JsonIn kit, String text) {
        String flat = flat(text);
        Map<String, Double> quantities = new TreeMap<>();
        for (JsonIn item : kit.at("items").list()) {
            quantities.merge(item.at("sku").text(), item.at("quantity").number(), Double::sum);
        }
        double lines = kit.at("parcels").list().stream()
                .flatMap(p -> p.at("lines").list().stream())
                .mapToDouble(l -> l.at("quantity").number())
                .sum();
        assertEquals(quantities.values().stream().mapToDouble(q -> q).sum(), lines, 1e-9);
        for (JsonIn item : kit.at("items").list()) {
            String quantity = Math.round(item.at("quantity").number()) + " "
                    + item.at("unit").text() + " ";
            assertTrue(
                    flat.contains(quantity),
                    () -> quantity + "of " + item.at("sku").text() + " is not in " + flat);
        }
        for (JsonIn coil : kit.at("coils").list()) {
            for (JsonIn cut : coil.at("cuts").list()) {
                String words = "loop " + cut.at("loop").text() + ": "
                        + Math.round(cut.at("length").number());
                assertEquals(1, count(flat, words), words);
            }
        }
        Map<String, Long> plates = kit.at("plates").at("pieces").list().stream()
                .collect(Collectors.groupingBy(
                        p -> p.at("product").text() + " "
                                + trimmed(p.at("length").number()),
                        TreeMap::new,
                        Collectors.counting()));
        plates.forEach((size, number) -> assertTrue(
                Pattern.compile(Pattern.quote(size) + "( \\([^)]*\\))? " + number + "\\b")
                        .matcher(flat)
                        .find(),
                () -> size + " x " + number + " is not in " + flat));
        assertEquals(-1, flat.indexOf("cost"), "costs travel with the kit");
    }

    /** Each stock and each piece is a rectangle as long as it should be at the scale beside it, to 0.2 mm on paper. */
    private void barsAreToScale(KitPlan plan, byte[] pdf) throws IOException {
        String text = flat(text("cut-sheet.pdf"));
        List<PdfMarks> pages = PdfMarks.of(pdf);
        Matcher bar = Pattern.compile("\\u2610 (?:\\d+ x )?(\\S+) of ([\\d.]+)(?: \\([^)]*\\\"\\))?.*? 1 : ([\\d.]+)")
                .matcher(text);
        int bars = 0;
        Map<Double, Long> wanted = new TreeMap<>();
        CutSheet sheet = CutSheet.of(plan);
        List<CutSheet.Group> groups = new ArrayList<>(sheet.coils());
        groups.addAll(sheet.plates());
        while (bar.find()) {
            double scale = Double.parseDouble(bar.group(3));
            CutSheet.Group group = groups.get(bars);
            assertEquals(group.product(), bar.group(1));
            assertEquals(group.length(), Double.parseDouble(bar.group(2)), 0.06);
            wanted.merge(group.length() / scale, 2L, Long::sum); // filled, then framed
            group.pieces().forEach(p -> wanted.merge(p.length() / scale, 2L, Long::sum));
            bars++;
        }
        assertEquals(groups.size(), bars, text);
        wanted.forEach((width, least) -> assertTrue(
                pages.stream().mapToLong(p -> p.rectanglesOfWidth(width)).sum() >= least,
                () -> "bars of " + width + " mm: " + least + " wanted"));
    }

    /** The name of each piece, coil and box stands on a label, with the order. */
    private static void everyPieceHasOneLabel(JsonIn kit, String text) {
        int boxes = kit.at("parcels").list().size();
        int pieces = kit.at("plates").at("pieces").list().size();
        int loops = kit.at("coils").list().stream()
                .mapToInt(c -> c.at("cuts").list().size())
                .sum();
        int labels = count(text, "order " + kit.at("order").text());
        assertTrue(labels >= boxes + pieces + loops, labels + " labels for " + (boxes + pieces + loops) + " things");
        assertFalse(
                Pattern.compile("\\bat( {2,}|\\R|$)").matcher(text).find(),
                () -> "a run torn from its place in " + text);
        List<String> words = List.of(text.split("\\s+", -1));
        for (JsonIn piece : kit.at("plates").at("pieces").list()) {
            assertTrue(words.contains(piece.at("name").text()), piece.at("name").text());
        }
    }

    /** Places from the paper alone against elements of kit.json, turned into the axes of the two lines by hand. */
    private static void loopIsRebuilt(JsonIn kit, String text) {
        List<JsonIn> at = kit.at("setOut").at("datum").at("at").list();
        double angle = Math.toRadians(kit.at("setOut").at("datum").at("angle").number());
        Map<String, RebuiltLoop.Chain> tables = RebuiltLoop.fromTables(text);
        Map<String, RebuiltLoop.Chain> lines = RebuiltLoop.fromLines(text);
        for (JsonIn loop : kit.at("loops").list()) {
            List<RebuiltLoop.Place> joints = new ArrayList<>();
            List<JsonIn> elements = loop.at("elements").list();
            elements.forEach(e -> joints.add(place(e.at("from"), at, angle)));
            joints.add(place(elements.get(elements.size() - 1).at("to"), at, angle));
            String name = loop.at("name").text();
            assertAlike(joints, tables.get(name), "tables, loop " + name);
            assertAlike(joints, lines.get(name), "lines, loop " + name);
        }
    }

    private static void assertAlike(List<RebuiltLoop.Place> wanted, RebuiltLoop.Chain found, String what) {
        assertTrue(found != null, what + ": nothing was read");
        assertEquals(wanted.size(), found.joints().size(), what);
        for (int i = 0; i < wanted.size(); i++) {
            assertEquals(0, wanted.get(i).off(found.joints().get(i)), 0.5, what + ", joint " + i);
        }
    }

    private static RebuiltLoop.Place place(JsonIn point, List<JsonIn> origin, double angle) {
        double dx = point.list().get(0).number() - origin.get(0).number();
        double dy = point.list().get(1).number() - origin.get(1).number();
        return new RebuiltLoop.Place(
                dx * Math.cos(angle) + dy * Math.sin(angle), dy * Math.cos(angle) - dx * Math.sin(angle));
    }

    /** Name, product, length, run and distance of each piece stand in one row. */
    private static void platesAreTold(JsonIn kit, String text) {
        String flat = flat(text);
        for (JsonIn piece : kit.at("plates").at("pieces").list()) {
            String row = piece.at("name").text() + " " + piece.at("product").text() + " "
                    + trimmed(piece.at("length").number());
            assertTrue(
                    Pattern.compile("\\u2610 " + Pattern.quote(row) + "( \\([^)]*\\))? run")
                            .matcher(flat)
                            .find(),
                    () -> row + " is not in " + flat);
        }
    }

    /** veraPDF, by the rules of ISO 19005-2 level B. */
    /** What is pushed through both holes and what lies between them, with the allowance, is what was cut: no tail comes out short. */
    private static void pipeAddsUp(JsonIn kit, String text) {
        List<JsonIn> loops = kit.at("loops").list();
        List<Double> pushed = numbers(text, "Push (.*?) through the flow hole");
        List<Double> left = numbers(text, "; ([^;]*?) or more must be left for the way to the port");
        double allowance =
                numbers(text, "both holes and an allowance of ([0-9.]+) %").get(0) / 100;
        for (int i = 0; i < loops.size(); i++) {
            double out = pushed.get(pushed.size() == 1 ? 0 : i);
            double back = left.get(left.size() == 1 ? 0 : i);
            double cut = (out + loops.get(i).at("floorLength").number() + back) * (1 + allowance);
            assertEquals(loops.get(i).at("cutLength").number(), cut, 1.2, "tenths of two ends, whole mm of a cut");
        }
    }

    /** The numbers of a sentence; loops in brackets are named by letters. */
    private static List<Double> numbers(String text, String sentence) {
        Matcher found = Pattern.compile(sentence).matcher(text);
        assertTrue(found.find(), () -> sentence + " is not in " + text);
        return Pattern.compile("[0-9]+(\\.[0-9]+)?")
                .matcher(found.group(1))
                .results()
                .map(m -> Double.parseDouble(m.group()))
                .toList();
    }

    /** Nobody is told to set the valve over the temperature at which a limit is broken. */
    private static void limitIsKept(JsonIn kit, String text) {
        if (text.contains("Set the mixing valve")) {
            double set =
                    numbers(text, "Set the mixing valve to ([0-9]+) degrees").get(0);
            double limit =
                    numbers(text, "over ([0-9.]+) degrees C a limit is broken").get(0);
            assertTrue(set <= limit, set + " is over " + limit);
            assertTrue(set <= kit.at("heating").at("supply").number() + 1e-6, "nor over what the job asks for");
        }
    }

    /** What the supply may have at most is one number of a tenth of a degree, in the data, as a check and on both papers. */
    private static void oneLimitIsOneNumber(JsonIn kit, String fitting, String heat) {
        double limit = kit.at("heating").at("highestSupply").number();
        String words = String.format(Locale.ROOT, "%.1f", limit);
        assertEquals(limit, Double.parseDouble(words), 1e-9);
        assertTrue(fitting.contains("over " + words + " degrees C a limit is broken"), words);
        assertTrue(heat.contains("Highest supply that keeps every limit: " + words + " degrees C"), words);
        for (JsonIn check : kit.at("checks").list()) {
            if (check.at("name").text().equals("supply to the floor at most what keeps every limit")) {
                assertEquals(limit, check.at("limit").number(), 1e-9);
            }
        }
    }

    /** A customer is told the heat of a flow that keeps every limit, and a heat report says which figures are not of such a flow. */
    private static void noForbiddenHeatIsPromised(KitPlan plan, JsonIn kit, String heat) {
        JsonIn said = kit.at("heating");
        boolean tooHot = said.at("supply").number() > said.at("highestSupply").number();
        JsonIn promised = tooHot ? said.at("held") : said;
        assertTrue(promised.at("supply").number() <= said.at("highestSupply").number());
        String watts = String.format(
                Locale.ROOT,
                "%.0f to %.0f W into the room at %s",
                promised.at("upwardLeast").number(),
                promised.at("upwardMost").number(),
                tooHot ? trimmed(promised.at("supply").number()) + " degrees C" : "these temperatures");
        List<String> granted = new Quoting().quote(plan, Optional.empty()).granted();
        assertEquals(1, granted.stream().filter(g -> g.contains(watts)).count(), () -> watts + " in " + granted);
        assertEquals(tooHot, heat.contains("That is what may be promised"));
        double warmest = said.at("warmUp").list().stream()
                .mapToDouble(p -> p.at("coolant").number())
                .max()
                .orElseThrow();
        if (plan.heat().orElseThrow().solution().circuit().isEmpty()) {
            assertEquals(promised.at("supply").number(), warmest, 1e-6, "warm-up");
        }
    }

    /** Whoever gets thicker insulation than was asked for is told by how much the floor gets higher. */
    private static void thickerInsulationIsTold(KitPlan plan) {
        List<String> granted = new Quoting().quote(plan, Optional.empty()).granted();
        double higher = plan.job()
                .build()
                .map(b -> plan.job().insulationLaid(b) - b.laidUnder())
                .orElse(0.0);
        List<String> told =
                granted.stream().filter(g -> g.contains("mm higher")).toList();
        assertEquals(higher > 0 ? 1 : 0, told.size(), granted::toString);
        told.forEach(t -> assertTrue(t.contains("floor gets " + trimmed(higher) + " mm higher"), t));
    }

    static void assertArchived(String name, byte[] pdf) throws IOException {
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_2_B);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_2_B, false)) {
            ValidationResult result = validator.validate(parser);
            assertTrue(
                    result.isCompliant(),
                    () -> name + ": "
                            + result.getTestAssertions().stream()
                                    .filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
                                    .map(TestAssertion::getMessage)
                                    .distinct()
                                    .collect(Collectors.joining("; ")));
        } catch (Exception e) {
            throw new IOException(name, e);
        }
    }

    /**
     * What the code in a box of a page says, mm from the page's lower left corner, read from its picture. Like a scanner, the
     * reader looks several times.
     */
    static String code(byte[] pdf, double x, double y, double side) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int dpi : new int[] {200, 400, 250}) {
                BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, dpi);
                double dot = dpi / 25.4;
                int px = (int) (side * dot);
                Optional<String> read =
                        read(image.getSubimage((int) (x * dot), image.getHeight() - (int) ((y + side) * dot), px, px));
                if (read.isPresent()) {
                    return read.get();
                }
            }
        }
        return "no code was found";
    }

    private static Optional<String> read(BufferedImage part) {
        int px = part.getWidth();
        int[] pixels = part.getRGB(0, 0, px, px, null, 0, px);
        BinaryBitmap bits = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(px, px, pixels)));
        try {
            return Optional.of(new QRCodeReader()
                    .decode(bits, Map.of(DecodeHintType.TRY_HARDER, true))
                    .getText());
        } catch (ReaderException e) {
            return Optional.empty();
        }
    }

    private String text(String name) {
        return OutsideReader.run("pdftotext", "-layout", folder.resolve(name).toString(), "-")
                .replace('\u00a0', ' ');
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static String trimmed(double length) {
        return length == Math.rint(length)
                ? Long.toString(Math.round(length))
                : Double.toString(Math.round(length * 10) / 10.0);
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part) + "(?![0-9])", -1).length - 1;
    }
}
