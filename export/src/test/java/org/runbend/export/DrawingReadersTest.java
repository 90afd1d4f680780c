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
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Programs of others read drawing.dxf of every example and tell as many things on each layer as were drawn, none of those
 * on paper among them, and a pipe as long as kit.json says. What ezdxf reads is held against the same in ExamplesTest.
 */
@ExtendWith(PlannedKits.Supply.class)
class DrawingReadersTest {
    /** Two windows: the paper itself, which the format wants first, and the one through which the floor is seen. */
    private static final int WINDOWS = 2;

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

    /** dxf-parser says nothing of windows; the other two count them. dxf-json is one more than it must be. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void packagesOfNpmAgree(Path job) throws IOException {
        Map<String, Integer> windows = new TreeMap<>(Map.of("dxf-parser", 0, "dxf", WINDOWS, "dxf-json", WINDOWS));
        for (Map.Entry<String, Integer> reader : windows.entrySet()) {
            Found found = Found.in(OutsideReader.node(script, reader.getKey(), drawing(job)));
            assertSame(job, found, reader.getValue(), reader.getKey());
            assertPipe(job, found.lengths().get("PIPE"), TRUE_ARCS, reader.getKey());
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void dimeAgrees(Path job) throws IOException {
        assertSame(job, Found.in(OutsideReader.runCompiled(program("dime"), drawing(job))), WINDOWS, "dime");
    }

    /** dxflib passes windows over. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void dxflibAgrees(Path job) throws IOException {
        assertSame(job, Found.in(OutsideReader.runCompiled(program("dxflib"), drawing(job))), 0, "dxflib");
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
        assertSame(job, new Found(counts, Map.of(), paper.size()), 0, "GDAL");
        assertPipe(job, pipe, CHORDS, "GDAL");
    }

    /**
     * The form for old controllers, without paper: a paragraph comes line by line. dxf-json reads nothing of that form and
     * says no word.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void oldFormIsReadAlike(Path job) throws IOException {
        Sheet sheet = new FloorDrafting().draw(kits.plan(job));
        Path file = scratch.resolve(PlannedKits.nameOf(job) + "-r12.dxf");
        Files.write(file, DxfBackend.bytes(sheet, Optional.empty(), DxfVersion.R12));
        Map<String, Integer> lines = sheet.marks().stream()
                .collect(Collectors.toMap(
                        m -> m.layer().name(),
                        m -> m.shape() instanceof Paragraph p ? p.lines().size() : 1,
                        Integer::sum,
                        TreeMap::new));
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

    private void assertSame(Path job, Found found, int windows, String reader) {
        KitPlan plan = kits.plan(job);
        Sheet sheet = new FloorDrafting().draw(plan);
        Map<String, Integer> drawn = sheet.marks().stream()
                .collect(Collectors.toMap(m -> m.layer().name(), m -> 1, Integer::sum, TreeMap::new));
        assertEquals(drawn, found.counts(), reader);
        int onPaper = new PaperDrafting().draw(plan, sheet).marks().marks().size();
        assertEquals(onPaper + windows, found.paper(), reader + ", on paper");
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
        double[][] points = Stream.of(text.substring(text.indexOf('(') + 1, text.indexOf(')')).split(",", -1))
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
