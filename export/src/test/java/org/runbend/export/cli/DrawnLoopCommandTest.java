package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;
import org.runbend.export.dxf.read.Snippets;

/** A loop from a layer of a drawing, on the command line: the same as ours where it is ours, and its faults at their place. */
class DrawnLoopCommandTest {
    private static final Path EXAMPLES = Path.of("..", "examples");

    @TempDir
    Path folder;

    @BeforeEach
    void lay() throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        for (String name : List.of("drawn-loop.yaml", "drawn-loop.dxf")) {
            String text = Files.readString(EXAMPLES.resolve("ways-in").resolve(name));
            Files.writeString(folder.resolve(name), text.replace("../workshop.yaml", "workshop.yaml"));
        }
    }

    private CommandRun plan(Path job, Path kit, String... more) {
        List<String> args = new ArrayList<>(List.of("plan", job.toString(), "--out", kit.toString()));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }

    /** Our own drawing as the designer's: each element, the pipe and the plates are the same. */
    @ParameterizedTest
    @CsvSource({"camper.yaml, r2000", "closet.yaml, r2000", "closet.yaml, r12", "pottery-pillars.yaml, r2000"})
    void ourOwnDrawingComesBack(String example, String form) throws IOException {
        Path ours = folder.resolve("ours");
        assertEquals(0, plan(EXAMPLES.resolve(example), ours, "--dxf", form).code());
        String text = Files.readString(EXAMPLES.resolve(example));
        Path job = Files.writeString(
                folder.resolve("job.yaml"),
                text.contains("\nlayout:\n")
                        ? text.replace(
                                "\nlayout:\n", "\nlayout:\n  loop: {dxf: ours/drawing.dxf, layer: PIPE, units: mm}\n")
                        : text.replace(
                                "layout: {", "layout: {loop: {dxf: ours/drawing.dxf, layer: PIPE, units: mm}, "));
        CommandRun again = plan(job, folder.resolve("again"));
        assertEquals(0, again.code(), again.err());
        JsonIn one = JsonIn.read(ours.resolve("kit.json"));
        JsonIn other = JsonIn.read(folder.resolve("again").resolve("kit.json"));
        assertEquals(elements(one), elements(other));
        for (String figure : List.of("plateable", "plated", "bought")) {
            assertEquals(
                    one.at("plates").at(figure).number(),
                    other.at("plates").at(figure).number(),
                    0.002,
                    figure);
        }
        assertEquals(cuts(one), cuts(other));
        assertEquals(one.at("total").number(), other.at("total").number());
        assertNotEquals(one.at("fingerprint").text(), other.at("fingerprint").text());
    }

    /**
     * Kind and places of each element, to a hundredth of a millimetre. A straight lead-in and the run that it goes on in are
     * one line in a drawing.
     */
    private static String elements(JsonIn kit) throws IOException {
        List<String> told = new ArrayList<>();
        String open = "";
        String from = "";
        for (JsonIn e : kit.at("loops").list().get(0).at("elements").list()) {
            String kind = e.at("kind").text();
            boolean on = kind.equals("run") && open.equals("run");
            from = on ? from : rounded(e.at("from"));
            if (on) {
                told.remove(told.size() - 1);
            }
            told.add(kind + " " + from + " " + rounded(e.at("to")));
            open = kind;
        }
        return String.join("\n", told);
    }

    private static String rounded(JsonIn point) {
        return point.list().stream()
                .map(v -> String.valueOf(Math.rint(v.number() * 100)))
                .collect(Collectors.joining(","));
    }

    private static String cuts(JsonIn kit) {
        return kit.at("loops").list().get(0).at("cutLength").number() + " "
                + kit.at("plates").at("pieces").list().stream()
                        .map(p -> p.at("length").number())
                        .sorted()
                        .toList();
    }

    @Test
    void theDrawingIsInTheFingerprint() throws IOException {
        Path job = folder.resolve("drawn-loop.yaml");
        assertEquals(0, plan(job, folder.resolve("one")).code());
        Path drawing = folder.resolve("drawn-loop.dxf");
        Files.writeString(drawing, Files.readString(drawing).replace("AC1009", "AC1006"));
        assertEquals(0, plan(job, folder.resolve("two"), "--improve").code());
        assertNotEquals(
                JsonIn.read(folder.resolve("one").resolve("kit.json"))
                        .at("fingerprint")
                        .text(),
                JsonIn.read(folder.resolve("two").resolve("kit.json"))
                        .at("fingerprint")
                        .text());
        assertTrue(Files.readString(folder.resolve("two-improved").resolve("kit.json"))
                .contains("\"lattice\""));
    }

    /** One change of the job, the line that it gives. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            dxf: drawn-loop.dxf | dxf: none.dxf | job.yaml:16:15: layout.loop.dxf: none.dxf: no such file
            layer: HEATING LOOP | layer: PIPE | job.yaml:16:15: layout.loop.dxf: drawn-loop.dxf: nothing visible is on layer PIPE; there are HEATING LOOP, ROOM
            layer: HEATING LOOP | layer: room | job.yaml:16:15: layout.loop.dxf: drawn-loop.dxf: the line on layer room is closed, it goes through [0, 0]; a loop begins and ends at the port, so open it there
            dxf: drawn-loop.dxf | dxf: workshop.yaml | job.yaml:16:15: layout.loop.dxf: workshop.yaml: this is no DXF file: it begins with '# What the workshop', a group code is wanted
            , layer: HEATING LOOP | '' | job.yaml:16:9: layout.loop.layer: is missing, the layer of the loop is wanted
            HEATING LOOP} | HEATING LOOP, units: cm} | job.yaml:16:15: layout.loop.dxf: the loop measures 22.25 x 14.00 m, the floor 2.40 x 1.60 m; units: mm makes it 2.23 x 1.40 m
            HEATING LOOP} | HEATING LOOP, units: mile} | job.yaml:16:59: layout.loop.units: found 'mile', one of mm, cm, dm, m, in, ft, yd is wanted
            HEATING LOOP} | HEATING LOOP, scale: 2} | job.yaml:16:52: layout.loop.scale: unknown key, the nearest known key is 'layer'
            edge: 75 | edge: 80 | job.yaml:16:9: layout.loop: the run from [75, 100] to [2180, 100]: comes within 75.00 mm of the outline, 80.00 mm asked, at (75.0, 100.0)
            """)
    void faultsAreOneLine(String what, String with, String line) throws IOException {
        String text = Files.readString(folder.resolve("drawn-loop.yaml"));
        assertTrue(text.contains(what), what);
        Path job = Files.writeString(folder.resolve("job.yaml"), text.replace(what, with));
        CommandRun run = CommandRun.of("check", job.toString());
        assertEquals(2, run.code());
        assertEquals(
                line, run.err().replace(folder + "/", "").lines().findFirst().orElse(""));
    }

    /** A tooth of 1200 x 900 mm, worked by hand: what is wrong is told by the places of the drawing. */
    @ParameterizedTest
    @CsvSource(delimiter = '#', textBlock = """
            10|80|20|100|10|900|20|100|42|1|10|900|20|200|10|80|20|200 # the bend from [900, 100] to [900, 200]: radius 50.00 mm is under the pipe's least radius 55.00 mm
            10|80|20|100|10|900|20|100|42|0.5|10|900|20|260|10|80|20|260 # the bend from [900, 100] to [900, 260]: a kink of 36.87 degrees at its start, 0.10 allowed
            10|80|20|100|10|1050|20|100|42|1|10|1050|20|260|10|80|20|260 # the bend from [1050, 100] to [1050, 260]: comes within 70.00 mm of the outline, 75.00 mm asked, at (1130.0, 180.0)
            10|80|20|100|10|900|20|100|42|1|10|900|20|260|10|500|20|260 # the loop: ends 538.52 mm from the port, 330.00 mm allowed
            10|80|20|100|10|900|20|100|42|1|10|900|20|260|10|500|20|260|10|600|20|260|10|80|20|260 # the loop turns straight back at [500, 260]
            10|2080|20|100|10|2900|20|100|42|1|10|2900|20|260|10|2080|20|260 # the loop lies off the floor: [2080, 100] to [2900, 260], the floor [0, 0] to [1200, 900]; draw it where the floor of the job file lies
            """)
    void faultsOfTheLoopAreAtTheirPlace(String vertices, String fault) throws IOException {
        String line = "0|LWPOLYLINE|8|L|70|0|" + vertices.strip();
        Files.writeString(folder.resolve("l.dxf"), Snippets.drawing("9|$INSUNITS|70|4", "", "", line));
        Path job = Files.writeString(folder.resolve("job.yaml"), """
                job: Tooth
                order: T-1
                catalog: workshop.yaml
                floor: {outline: [[0, 0], [1200, 0], [1200, 900], [0, 900]], port: {at: [0, 60]}}
                layout: {loop: {dxf: l.dxf, layer: L}}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """);
        CommandRun run = CommandRun.of("check", job.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().lines().anyMatch(l -> l.endsWith(": " + fault.strip())), run.err());
    }
}
