package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;

/** One floor written in two ways is one kit: the whole of kit.json is the same but the fingerprint of the files read. */
class TwinJobsTest {
    private static final String REST = """
            job: Twin
            order: T-2
            catalog: workshop.yaml
            pipe: {product: PX-16, tails: [36in, 914.4mm]}
            plates: {product: [SP-1, SP-2]}
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void catalog() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
    }

    private String kit(String text) throws IOException {
        Path job = Files.writeString(folder.resolve("job.yaml"), text);
        Path out = folder.resolve("kit");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", out.toString(), "--quiet");
        assertTrue(run.code() <= 1, run::err);
        String kit = Files.readString(out.resolve("kit.json"));
        List<String> prints =
                kit.lines().filter(l -> l.contains("\"fingerprint\"")).toList();
        assertEquals(2, prints.size(), "one of the floor, one of the files");
        assertTrue(prints.get(0).startsWith("    "), "the floor's own stands first");
        return kit.lines().filter(l -> !l.startsWith("  \"fingerprint\"")).collect(Collectors.joining("\n"));
    }

    /** 8 ft are 96 in are 2438.4 mm; 5 ft are 1524 mm; 3 in are 76.2 mm. */
    @Test
    void inchesAndMillimetres() throws IOException {
        String inches = REST + """
                units: in
                floor:
                  outline: [[0, 0], [8ft, 0], [96, 60], [0, 5ft]]
                  marks: [{point: [0, 24], text: door}]
                  keepOut: [{name: drain, circle: {centre: [28, 10], radius: 2 1/2}, clearance: 2.5}]
                  port: {at: [0, 3]}
                layout: {leftOutPrice: 10, spacing: 150mm, edge: 3in}
                """;
        String metric = REST + """
                units: mm
                floor:
                  outline: [[0, 0], [2438.4, 0], [2.4384m, 152.4cm], [0, 1524]]
                  marks: [{point: [0, 609.6], text: door}]
                  keepOut: [{name: drain, circle: {centre: [711.2, 254], radius: 63.5}, clearance: 63.5}]
                  port: {at: [0, 76.2]}
                layout: {leftOutPrice: 10, spacing: 150, edge: 76.2}
                """;
        assertEquals(kit(metric), kit(inches));
    }

    @Test
    void aBaseAndItsDifferences() throws IOException {
        String floor = """
                floor:
                  outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]
                  keepOut: [{name: drain, circle: {centre: [700, 250], radius: %d}, clearance: 60}]
                  port: {at: [0, 75]}
                layout: {leftOutPrice: 10, spacing: %d}
                """;
        Files.writeString(folder.resolve("base.yaml"), REST + floor.formatted(30, 200));
        String extended = """
                extends: base.yaml
                floor:
                  keepOut: [{name: drain, circle: {centre: [700, 250], radius: 60}, clearance: 60}]
                layout: {leftOutPrice: 10, spacing: 150}
                """;
        assertEquals(kit(REST + floor.formatted(60, 150)), kit(extended));
    }

    @Test
    void anArcAndItsChords() throws IOException {
        String floor = """
                floor:
                  outline: [[0, 0], [2000, 0], %s, [0, 1500]]
                  unheated: [{name: step, polygon: [[0, 1100], %s, [400, 1500], [0, 1500]]}]
                  port: {at: [0, 75]}
                """;
        String arcs = floor.formatted("{arc: [[2480, 750], [2000, 1500]]}", "{arc: [[280, 1220], [400, 1500]]}")
                .replace(", [400, 1500], [0, 1500]]}", ", [0, 1500]]}");
        String written = REST + arcs;
        Path job = Files.writeString(folder.resolve("arc.yaml"), written);
        Job.FloorPlan read = JobReader.read(job, Optional.empty()).floor();
        String outline = points(read.outline());
        String step = points(read.unheated().get(0).region().corners());
        assertTrue(outline.length() > 500, outline);
        String chords = REST
                + arcs.replaceFirst("outline: .*", "outline: " + outline)
                        .replaceFirst("polygon: .*\\}\\]", "polygon: " + step + "}]");
        assertTrue(!chords.contains("arc"), chords);
        assertEquals(kit(written), kit(chords));
    }

    private static String points(List<Point> points) {
        return points.stream().map(p -> "[" + p.x() + ", " + p.y() + "]").collect(Collectors.joining(", ", "[", "]"));
    }

    /** The tape's lengths, what was drawn and the difference stand in kit.json, and the greatest one among the checks. */
    @Test
    void measuredLengthsAndTheirResidualsAreKept() throws IOException {
        String measured = REST + """
                floor:
                  measured: {corners: [A, B, C, D], lengths: [[A, B, 2400], [B, C, 1500], [C, D, 2400], [D, A, 1500],
                    [A, C, 2855.194], [B, D, 2830.194]]}
                  port: {at: [0, 75]}
                """;
        kit(measured);
        JsonIn kit = JsonIn.read(folder.resolve("kit").resolve("kit.json"));
        List<JsonIn> lengths = kit.at("floor").at("measured").list();
        assertEquals(6, lengths.size());
        JsonIn longest = lengths.get(4);
        assertEquals("A", longest.at("from").text());
        assertEquals("C", longest.at("to").text());
        assertEquals(2855.194, longest.at("length").number(), 1e-9);
        // By the condition of a rectangle each diagonal keeps a quarter of the 25 mm between the two.
        assertEquals(6.25, longest.at("residual").number(), 0.1);
        assertEquals(
                longest.at("length").number() - longest.at("residual").number(),
                longest.at("adjusted").number(),
                1e-6);
        JsonIn check = kit.at("checks").list().stream()
                .filter(c -> c.at("name").text().contains("residual"))
                .findFirst()
                .orElseThrow();
        assertEquals("warn", check.at("verdict").text());
        assertEquals(5, check.at("limit").number(), 0);
        assertEquals("own limit", check.at("source").text());
        assertEquals(longest.at("residual").number(), check.at("value").number(), 0.01);
    }
}
