package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Programs of others read drawing.dxf of every example and tell as many things on each layer as were drawn, nothing of the
 * sheet of paper among them, and a pipe as long as kit.json says. What ezdxf reads is held against the same in ExamplesTest.
 */
@ExtendWith(PlannedKits.Supply.class)
class DrawingReadersTest {
    /** Length of the pipe where arcs are read as arcs, and where they come as chords. */
    private static final double TRUE_ARCS = 0.0005;

    private static final double CHORDS = 0.005;

    @TempDir
    static Path scratch;

    private static Path script;

    private final PlannedKits kits;

    DrawingReadersTest(PlannedKits kits) {
        this.kits = kits;
    }

    static Stream<Path> jobs() throws IOException {
        return PlannedKits.jobs().stream();
    }

    @BeforeAll
    static void layScripts() throws IOException {
        script = OutsideReader.resource(scratch, "read_dxf.js");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void packagesOfNpmAgree(Path job) throws IOException {
        for (String reader : List.of("dxf-parser", "dxf", "dxf-json")) {
            Found found = Found.in(OutsideReader.node(script, reader, drawing(job)));
            assertSame(job, found, reader);
            assertPipe(job, found.lengths().get("PIPE"), TRUE_ARCS, reader);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void dimeAndDxflibAgree(Path job) throws IOException {
        for (String reader : List.of("dime", "dxflib")) {
            assertSame(job, Found.in(OutsideReader.runCompiled(program(reader), drawing(job))), reader);
        }
    }

    /** ezdxf finds the sheet: its marks, and two windows, the paper itself and the one through which the floor is seen. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void sheetOfPaperIsALayoutOfItsOwn(Path job) throws IOException {
        KitPlan plan = kits.plan(job);
        PaperSheet paper = new PaperDrafting().draw(plan, new FloorDrafting().draw(plan));
        String start = "layout " + paper.name() + " ";
        String layout = OutsideReader.python(
                        OutsideReader.resource(scratch, "read_forms.py"), List.of("ezdxf"), drawing(job))
                .lines()
                .filter(l -> l.startsWith(start))
                .findFirst()
                .orElseThrow();
        int things = Stream.of(layout.substring(start.length()).split(" ", -1))
                .mapToInt(c -> Integer.parseInt(c.substring(c.indexOf('=') + 1)))
                .sum();
        assertEquals(paper.marks().marks().size() + 2, things, layout);
        assertTrue(layout.contains(" VIEWPORT=2"), layout);
    }

    /** GDAL gives a dimension as the parts of its picture; all carry the dimension's handle, and are one thing. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void gdalAgrees(Path job) throws IOException {
        String table = OutsideReader.run(
                "ogr2ogr",
                "-f",
                "CSV",
                "/vsistdout/",
                drawing(job),
                "-lco",
                "GEOMETRY=AS_WKT",
                "-select",
                "Layer,PaperSpace,EntityHandle");
        Pattern row = Pattern.compile("\"?([A-Z][^\"]*)\"?,\"?([A-Z_]+)\"?,\"?([^,\"]*)\"?,\"?([0-9A-F]+)\"?");
        Map<String, Set<String>> handles = new TreeMap<>();
        Set<String> paper = new HashSet<>();
        double pipe = 0;
        for (String line : table.lines().skip(1).toList()) {
            Matcher cells = row.matcher(line);
            assertTrue(cells.matches(), line);
            if (cells.group(3).equals("1")) {
                paper.add(cells.group(4));
                continue;
            }
            handles.computeIfAbsent(cells.group(2), layer -> new HashSet<>()).add(cells.group(4));
            pipe += cells.group(2).equals("PIPE") ? length(cells.group(1)) : 0;
        }
        Map<String, Integer> counts = new TreeMap<>();
        handles.forEach((layer, found) -> counts.put(layer, found.size()));
        assertSame(job, new Found(counts, Map.of(), paper.size()), "GDAL");
        assertPipe(job, pipe, CHORDS, "GDAL");
    }

    /**
     * The form for old controllers, without paper: a paragraph comes line by line, a dimension as its parts. dxf-json reads
     * nothing of that form and says no word.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void oldFormIsReadAlike(Path job) throws IOException {
        Sheet sheet = new FloorDrafting().draw(kits.plan(job));
        Path file = scratch.resolve(PlannedKits.nameOf(job) + "-r12.dxf");
        Files.write(file, DxfBackend.bytes(sheet, Optional.empty(), DxfVersion.R12));
        Map<String, Integer> lines = sheet.marks().stream()
                .collect(Collectors.toMap(m -> m.layer().name(), m -> oldParts(m.shape()), Integer::sum, TreeMap::new));
        for (String reader : List.of("dxf", "dxf-parser")) {
            Found found = Found.in(OutsideReader.node(script, reader, file.toString()));
            assertEquals(lines, found.counts(), reader);
            assertPipe(job, found.lengths().get("PIPE"), TRUE_ARCS, reader);
        }
        for (String reader : List.of("dime", "dxflib")) {
            assertEquals(
                    lines,
                    Found.in(OutsideReader.runCompiled(program(reader), file.toString()))
                            .counts(),
                    reader);
        }
    }

    private static int oldParts(Shape shape) {
        if (shape instanceof Dimension dimension) {
            return dimension.parts().size();
        }
        return shape instanceof Paragraph paragraph ? paragraph.lines().size() : 1;
    }

    private void assertSame(Path job, Found found, String reader) {
        Map<String, Integer> drawn = new FloorDrafting()
                .draw(kits.plan(job)).marks().stream()
                        .collect(Collectors.toMap(m -> m.layer().name(), m -> 1, Integer::sum, TreeMap::new));
        assertEquals(drawn, found.counts(), reader);
        assertEquals(0, found.paper(), reader + ", on paper");
    }

    private void assertPipe(Path job, double length, double share, String reader) throws IOException {
        double floor = kits.kit(job).at("loops").list().stream()
                .mapToDouble(l -> l.at("floorLength").number())
                .sum();
        assertEquals(floor, length, share * floor, reader);
    }

    private String drawing(Path job) {
        return kits.folder(job).resolve("drawing.dxf").toString();
    }

    private static Path program(String library) throws IOException {
        Path program = scratch.resolve("count_" + library);
        return Files.exists(program) ? program : OutsideReader.compiled(scratch, "count_" + library + ".cpp", library);
    }

    /** Length of a line given as well-known text: LINESTRING (0 0,2400 0,...). */
    private static double length(String text) {
        assertTrue(text.startsWith("LINESTRING"), text);
        double[][] points = Stream.of(
                        text.substring(text.indexOf('(') + 1, text.indexOf(')')).split(",", -1))
                .map(p -> Stream.of(p.trim().split(" ", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
        double sum = 0;
        for (int i = 1; i < points.length; i++) {
            sum += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
        }
        return sum;
    }

    /** What a reader told: things by layer in model space, lengths by layer, and how many things lie on paper. */
    private record Found(Map<String, Integer> counts, Map<String, Double> lengths, int paper) {
        static Found in(String words) {
            Map<String, Integer> counts = new TreeMap<>();
            Map<String, Double> lengths = new TreeMap<>();
            int paper = -1;
            for (String line : words.lines().toList()) {
                List<String> w = List.of(line.split(" ", -1));
                switch (w.get(0).toLowerCase(Locale.ROOT)) {
                    case "count" -> counts.put(w.get(1), Integer.parseInt(w.get(2)));
                    case "length" -> lengths.put(w.get(1), Double.parseDouble(w.get(2)));
                    case "paper" -> paper = Integer.parseInt(w.get(1));
                    default -> throw new AssertionError(line);
                }
            }
            return new Found(counts, lengths, paper);
        }
    }
}
