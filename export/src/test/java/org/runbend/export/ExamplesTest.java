package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.CutsCsv;
import org.runbend.export.data.KitJson;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.papers.PaperForm;
import org.runbend.export.papers.PickList;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;

/**
 * Every job under examples/ goes the whole way through the command line, once; the tests read what lies in its folder.
 *
 * <p>One instance for all tests, as a plan takes seconds and is only read.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@ExtendWith(PlannedKits.Supply.class)
class ExamplesTest {
    @TempDir
    static Path scratch;

    private final PlannedKits kits;

    ExamplesTest(PlannedKits kits) {
        this.kits = kits;
    }

    static Stream<Path> jobs() throws IOException {
        return PlannedKits.jobs().stream();
    }

    /** Floors of the sibling folder with others' data whose lattice has up to 250 nodes; the examples if it is absent. */
    static Stream<Path> refereed() throws IOException {
        Optional<Path> shared = shared();
        if (shared.isEmpty()) {
            return jobs();
        }
        // The referee reads plain outlines in mm only; other ways to give a floor are held to their plain twins
        // elsewhere.
        Stream<Path> plain = jobs().filter(j -> PlannedKits.EXAMPLES.equals(j.getParent()));
        Path floors = shared.get().resolve("data/floors");
        List<Path> all = new ArrayList<>(plain.toList());
        for (String line : Files.readAllLines(floors.resolve("best.csv"))) {
            List<String> cells = List.of(line.split(",", -1));
            if (cells.get(1).matches("[0-9]+") && Integer.parseInt(cells.get(1)) <= 250) {
                all.add(floors.resolve(cells.get(0) + ".yaml"));
            }
        }
        return all.stream();
    }

    /** The folder {@code shared} beside the project or further up, if it holds the referee. */
    private static Optional<Path> shared() {
        Path at = Path.of("").toAbsolutePath();
        while (at != null && !Files.exists(at.resolve("shared/tools/check_kit.py"))) {
            at = at.getParent();
        }
        return Optional.ofNullable(at).map(a -> a.resolve("shared"));
    }

    @Test
    void seesAllExamples() throws IOException {
        List<String> names = jobs().map(j -> j.getFileName().toString()).toList();
        assertTrue(names.size() >= 5, names::toString);
        assertTrue(names.containsAll(List.of("camper.yaml", "cabin-boat.yaml", "closet.yaml")), names::toString);
        assertTrue(Files.exists(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void planEndsWellAndWritesItsFiles(Path job) throws IOException {
        CommandRun run = planned(job);
        assertEquals(0, run.code(), run::err);
        assertEquals("", run.err());
        assertTrue(run.out().contains("Written to "), run::out);
        JsonIn kit = kit(job);
        try (Stream<Path> files = Files.walk(folder(job))) {
            assertEquals(
                    kit.at("files").list().stream().map(JsonIn::text).sorted().toList(),
                    files.filter(Files::isRegularFile)
                            .map(f -> folder(job).relativize(f).toString())
                            .sorted()
                            .toList());
        }
        for (String name : List.of(
                "kit.json",
                "drawing.dxf",
                "floor.svg",
                "pick-list.pdf",
                "cut-sheet.pdf",
                "labels.pdf",
                "fitting-sheet.pdf",
                "confirm.pdf",
                "cuts.csv")) {
            assertTrue(Files.size(folder(job).resolve(name)) > 100, name);
        }
        assertTrue(kit.at("fingerprint").text().matches("[0-9a-f]{64}"));
        for (JsonIn check : kit.at("checks").list()) {
            assertFalse(
                    check.at("verdict").text().equals("fail"), check.at("name").text());
        }
    }

    /** A shop that reads model space only still learns side, depth and cutter, in both forms of the drawing. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void modelSpaceSaysHowToCut(Path job) throws IOException {
        KitPlan plan = kits.plan(job);
        JsonIn channel = kit(job).at("channel");
        String deep = Plain.number(channel.at("depth").number()) + " deep, cutter dia ";
        for (boolean contour : new boolean[] {true, false}) {
            String words = new FloorDrafting(contour ? GrooveForm.EDGE : GrooveForm.CENTRE)
                    .draw(plan).marks().stream()
                            .filter(m -> m.layer() == Layer.NOTE && m.shape() instanceof Paragraph)
                            .map(m -> String.join(" ", ((Paragraph) m.shape()).lines()))
                            .collect(Collectors.joining(" "))
                            .replaceAll("\\s+", " ");
            String side = contour ? "CHANNEL: pocket, tool inside" : "PIPE and CHANNEL: tool on the line";
            assertTrue(words.contains(side) && words.contains("FLOOR: through, tool outside the line"), words);
            assertTrue(words.contains(deep) && words.contains("step-over") == contour, words);
        }
    }

    /** Length, cut, costs and sums of kit.json agree with one another; the rules are those told with the file format. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void kitAgreesWithItself(Path job) throws IOException {
        JsonIn kit = kit(job);
        double tails = kit.at("pipe").at("tails").list().stream()
                .mapToDouble(JsonIn::number)
                .sum();
        double more = 1 + kit.at("pipe").at("allowance").number();
        for (JsonIn loop : kit.at("loops").list()) {
            double sum = loop.at("elements").list().stream()
                    .mapToDouble(e -> e.at("length").number())
                    .sum();
            assertEquals(sum, loop.at("floorLength").number(), 0.001);
            double outside = kit.at("port").at("holes").list().stream()
                    .filter(h -> h.at("loop").text().equals(loop.at("name").text()))
                    .mapToDouble(h -> h.at("toPort").number())
                    .sum();
            assertEquals(
                    Math.ceil((sum + outside + tails) * more - 1e-6),
                    loop.at("cutLength").number());
            if (!kit.has("lattice")) {
                assertFalse(loop.has("turnBound") || loop.has("objectiveBound") || loop.has("leftOut"));
                continue;
            }
            assertTrue(!loop.has("turnBound")
                    || loop.at("turns").number() >= loop.at("turnBound").number());
            assertTrue(
                    loop.at("objective").number() >= loop.at("objectiveBound").number() - 1e-9);
        }
        JsonIn plates = kit.at("plates");
        assertTrue(plates.at("bought").whole() >= plates.at("bound").whole());
        assertTrue(plates.at("runByRun").whole() >= plates.at("bought").whole());
        assertTrue(kit.at("coilCost").whole() >= kit.at("coilBound").whole());
        long total = kit.at("items").list().stream()
                .mapToLong(i -> i.at("price").whole() * i.at("quantity").whole())
                .sum();
        assertEquals(total, kit.at("total").whole());
    }

    /** Each cut of kit.json is a row of cuts.csv, in the same order, from stock of the same length; none is left over. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void cutsAgreeWithTheKit(Path job) throws IOException {
        JsonIn kit = kit(job);
        List<String> expected = new ArrayList<>();
        for (JsonIn coil : kit.at("coils").list()) {
            for (JsonIn cut : coil.at("cuts").list()) {
                expected.add(row("pipe", coil, cut.at("length"), coil.at("left")));
            }
        }
        for (JsonIn stock : kit.at("plates").at("stock").list()) {
            for (JsonIn cut : stock.at("cuts").list()) {
                expected.add(row("plate", stock, cut, stock.at("offcut")));
            }
        }
        List<String> lines = Files.readAllLines(folder(job).resolve("cuts.csv"));
        assertEquals("kind,stockId,product,stockLength,cutNo,length,goesTo,leftover", lines.get(0));
        List<String> found = lines.stream()
                .skip(1)
                .map(l -> List.of(l.split(",", -1)))
                .map(c -> row(c.get(0), c.get(2), number(c.get(3)), number(c.get(5)), number(c.get(7))))
                .toList();
        assertEquals(expected, found);
        assertTrue(expected.size() >= 2, expected::toString);
        assertEquals(
                kit.at("plates").at("pieces").list().size(),
                found.stream().filter(r -> r.startsWith("plate ")).count());
    }

    private static String row(String kind, JsonIn stock, JsonIn cut, JsonIn left) {
        return row(kind, stock.at("product").text(), stock.at("length").number(), cut.number(), left.number());
    }

    private static String row(String kind, String product, double stock, double cut, double left) {
        return String.format(Locale.ROOT, "%s %s %.2f %.2f %.2f", kind, product, stock, cut, left);
    }

    private static double number(String cell) {
        return Double.parseDouble(cell);
    }

    /**
     * The plan made anew holds before its verifier and gives the same bytes; ezdxf finds nothing to mend, as many things
     * on each layer as the sheet has marks, and a pipe as long as kit.json says (to 0.05 %).
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void drawingAgreesWithTheKitAndComesOutAlike(Path job) throws IOException {
        KitPlan plan = kits.plan(job);
        assertEquals(List.of(), KitVerifier.verify(plan));
        Sheet sheet = new FloorDrafting().draw(plan);
        JsonIn kit = kit(job);
        List<String> files = kit.at("files").list().stream().map(JsonIn::text).toList();
        Optional<PaperSheet> paper = Optional.of(new PaperDrafting().draw(plan, sheet));
        assertSame(job, "drawing.dxf", DxfBackend.bytes(sheet, paper, DxfVersion.R2000));
        assertSame(job, "floor.svg", SvgBackend.bytes(sheet));
        assertSame(job, "cuts.csv", new CutsCsv().bytes(plan));
        assertSame(job, "kit.json", new KitJson().bytes(plan, files));
        assertSame(job, "pick-list.pdf", PickList.bytes(plan, PaperForm.USUAL));

        List<String> facts = OutsideReader.ezdxf(folder(job).resolve("drawing.dxf"));
        assertTrue(facts.containsAll(List.of("errors 0", "fixes 0", "insunits 4")), facts::toString);
        assertEquals(marksOf(sheet), countsIn(facts));
        double pipe = facts.stream()
                .filter(f -> f.startsWith("length PIPE "))
                .mapToDouble(f -> number(f.substring("length PIPE ".length())))
                .sum();
        double floor = kit.at("loops").list().stream()
                .mapToDouble(l -> l.at("floorLength").number())
                .sum();
        assertEquals(floor, pipe, 0.0005 * floor);
    }

    private void assertSame(Path job, String name, byte[] again) throws IOException {
        planned(job);
        assertArrayEquals(Files.readAllBytes(folder(job).resolve(name)), again, name);
    }

    private static Map<String, Integer> marksOf(Sheet sheet) {
        return sheet.marks().stream()
                .collect(Collectors.toMap(m -> m.layer().name(), m -> 1, Integer::sum, TreeMap::new));
    }

    private static Map<String, Integer> countsIn(List<String> facts) {
        Map<String, Integer> counted = new TreeMap<>();
        facts.stream()
                .filter(f -> f.startsWith("count "))
                .map(f -> f.split(" ", -1))
                .forEach(f -> counted.merge(f[1], Integer.parseInt(f[3]), Integer::sum));
        return counted;
    }

    /**
     * The pictures of the index are what the tool draws today. When a change alters a drawing on purpose, run this test with
     * {@code -Dpictures.write=true}, look at every picture that changed, and commit them with the change.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void pictureIsDrawnAsApproved(Path job) throws IOException {
        planned(job);
        Path picture = PlannedKits.EXAMPLES.resolve("pictures").resolve(PlannedKits.nameOf(job) + ".svg");
        String drawn = Files.readString(folder(job).resolve("floor.svg"));
        if (Boolean.getBoolean("pictures.write")) {
            Files.writeString(picture, drawn);
        }
        assertEquals(Files.readString(picture), drawn, "run with -Dpictures.write=true and look at " + picture);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void gdalReadsTheDrawing(Path job) throws IOException {
        planned(job);
        String summary = OutsideReader.run(
                "ogrinfo", "-al", "-q", folder(job).resolve("drawing.dxf").toString());
        for (String layer : List.of("FLOOR", "PIPE", "PLATE", "NOTE", "TITLE")) {
            assertTrue(summary.contains("Layer (String) = " + layer), layer);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void librecadDrawsTheDrawing(Path job) throws IOException {
        planned(job);
        // It puts its picture beside the drawing, so it gets a copy.
        Path copy = Files.createDirectories(scratch.resolve("cad")).resolve(PlannedKits.nameOf(job) + ".dxf");
        Files.copy(folder(job).resolve("drawing.dxf"), copy);
        OutsideReader.run("librecad", "dxf2pdf", "-a", copy.toString());
        Path pdf = copy.resolveSibling(PlannedKits.nameOf(job) + ".pdf");
        assertTrue(Files.size(pdf) > 2000);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void papersAreSoundAndBringTheirFonts(Path job) throws IOException {
        planned(job);
        for (String name :
                List.of("pick-list.pdf", "cut-sheet.pdf", "labels.pdf", "fitting-sheet.pdf", "confirm.pdf")) {
            isSoundAndBringsItsFonts(folder(job).resolve(name).toString());
        }
    }

    private static void isSoundAndBringsItsFonts(String file) {
        assertTrue(OutsideReader.run("qpdf", "--check", file).contains("No syntax or stream encoding errors found"));
        List<String> fonts = OutsideReader.run("pdffonts", file).lines().skip(2).toList();
        assertFalse(fonts.isEmpty());
        // The columns emb, sub and uni stand before the two of the object's number.
        fonts.forEach(f -> assertTrue(f.matches(".* yes +(yes|no) +yes +[0-9]+ +[0-9]+ *"), f));
    }

    /** A stranger's program works the plan out again from job, kit.json and drawing alone. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("refereed")
    void refereeAgrees(Path job) throws IOException {
        assumeTrue(shared().isPresent(), "the folder shared/ with the referee is not beside the project");
        Path near = job.resolveSibling(PlannedKits.CATALOG);
        Path used = Files.exists(near) ? job : Files.copy(job, catalogued().resolve(job.getFileName()));
        CommandRun run = planned(used);
        assertEquals(0, run.code(), run::err);
        String word = OutsideReader.python(
                shared().get().resolve("tools/check_kit.py"),
                List.of("yaml", "shapely", "ezdxf"),
                used.toString(),
                folder(used).resolve("kit.json").toString(),
                folder(used).resolve("drawing.dxf").toString());
        assertTrue(word.contains(" passed, 0 failed"), word);
    }

    private static Path catalogued() throws IOException {
        Path folder = Files.createDirectories(scratch.resolve("floors"));
        if (!Files.exists(folder.resolve(PlannedKits.CATALOG))) {
            Files.copy(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG), folder.resolve(PlannedKits.CATALOG));
        }
        return folder;
    }

    @AfterAll
    void eachJobRanOnce() {
        assertTrue(kits.count() >= 5, () -> Integer.toString(kits.count()));
    }

    private CommandRun planned(Path job) {
        return kits.run(job);
    }

    private JsonIn kit(Path job) throws IOException {
        return kits.kit(job);
    }

    private Path folder(Path job) {
        return kits.folder(job);
    }
}
