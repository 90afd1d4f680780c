package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;

/** A floor changes after its kit was cut: {@code plan --was}. */
class ChangeCommandTest {
    private static final String JOB = """
            job: Rest room
            order: C-1
            catalog: workshop.yaml
            floor:
              outline: [[0, 0], [2100, 0], [2100, 1350], [0, 1350]]
              keepOut:
                - {name: drain, kind: drain, circle: {centre: [1500, 900], radius: 40}, clearance: 60}
                - {name: bolt, kind: bolt, point: [600, 450], clearance: 40}
              port: {at: [0, 700], reach: 330}
            layout: {leftOutPrice: 4, spacing: 150, edge: 75, along: x}
            pipe: {product: PX-16, tails: [900, 1100], allowance: 2%}
            plates: {product: [SP-1], bendClearance: 100, gap: 5, minPiece: 150, coverage: 85%}
            """;

    /** How finely pipe is looked at, mm. */
    private static final double STEP = 2;

    /** How far apart pipe may be and still be the same: a bend leaves the run it begins on by more after 4 mm, mm. */
    private static final double SAME = 0.1;

    @TempDir
    Path folder;

    private static Path before;

    @BeforeAll
    static void cut(@TempDir Path first) throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), first.resolve("workshop.yaml"));
        before = plan(first, JOB, "before");
    }

    @BeforeEach
    void lay() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
    }

    private Path plan(String text, String name, String... more) throws IOException {
        return plan(folder, text, name, more);
    }

    private static Path plan(Path folder, String text, String name, String... more) throws IOException {
        Path job = Files.writeString(folder.resolve(name + ".yaml"), text);
        List<String> words = new ArrayList<>(
                List.of("plan", job.toString(), "--out", folder.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertTrue(run.code() <= 1, run::err);
        return folder.resolve(name).resolve("kit.json");
    }

    /**
     * What is thrown away is measured here from both files alone. It is at most half of what the same job begun afresh throws
     * away (measured on that plan, which knows nothing of the kit before), or under a tenth, where a single run is touched; a
     * wall that takes a whole column of places with it leaves less to save.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "drain moved      | 0.5 | centre: [1500, 900] | centre: [1500, 980]",
                "bolt met         | 0.5 | port: {at           | keepOutMore",
                "wall 20 shorter  | 0.7 | [2100, 0], [2100,   | [2080, 0], [2080,",
                "door added       | 0.5 | [0, 1350]]          | [0, 1350], [0, 1000], [-60, 1000], [-60, 800], [0, 800]]",
            })
    void littleIsThrownAway(String name, double share, String written, String instead) throws IOException {
        String text = instead.equals("keepOutMore")
                ? JOB.replace("  port:", "    - {name: met, kind: bolt, point: [1050, 670], clearance: 40}\n  port:")
                : JOB.replace(written, instead);
        assertFalse(text.equals(JOB), name);
        Path after = plan(text, "after", "--was", before.toString());
        Path afresh = plan(text, "afresh");
        double all = length(pipe(before));
        double goes = gone(before, after);
        double fresh = gone(before, afresh);
        JsonIn changes = JsonIn.read(after).at("changes");
        assertEquals(goes, changes.at("pipe").at("goes").number(), 0.02 * all, "as measured");
        assertEquals(
                all,
                changes.at("pipe").at("stays").number()
                        + changes.at("pipe").at("goes").number(),
                0.1);
        assertTrue(
                goes <= share * fresh || goes < 0.1 * all, () -> goes + " mm of " + all + " go, begun afresh " + fresh);
        if (changes.has("afresh")) {
            assertEquals(fresh, changes.at("afresh").at("goes").number(), 0.02 * all);
        }
        eachPieceHasOneUse(before, after);
        assertTrue(Files.size(folder.resolve("after").resolve("changes.pdf")) > 1000);
        String paper = OutsideReader.run(
                "pdftotext", folder.resolve("after").resolve("changes.pdf").toString(), "-");
        assertTrue(paper.contains("Old and new in one picture"), paper);
    }

    /** Pieces that come back, are cut again, lie elsewhere or stay: together all that were cut, and none is stock twice. */
    private static void eachPieceHasOneUse(Path before, Path after) throws IOException {
        JsonIn kit = JsonIn.read(after);
        List<JsonIn> fates = kit.at("changes").at("plates").list();
        assertEquals(JsonIn.read(before).at("plates").at("pieces").list().size(), fates.size());
        List<String> used = kit.at("plates").at("stock").list().stream()
                .filter(s -> s.has("id"))
                .map(s -> s.at("id").text())
                .toList();
        for (JsonIn fate : fates) {
            boolean back = fate.at("use").text().equals("back");
            long times = used.stream().filter(fate.at("id").text()::equals).count();
            assertEquals(back ? 0 : 1, times, fate.at("id").text());
        }
    }

    /** The same job again: nothing goes and nothing is bought. */
    @Test
    void nothingChanges() throws IOException {
        JsonIn kit = JsonIn.read(plan(JOB, "after", "--was", before.toString()));
        assertEquals(0, kit.at("changes").at("pipe").at("goes").number(), 0.01);
        assertEquals(0, kit.at("plates").at("bought").number());
        assertEquals(0, kit.at("coilCost").number());
        assertTrue(kit.at("changes").at("plates").list().stream()
                .allMatch(p -> p.at("use").text().equals("stays")));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "PX-16\" | PX-12\" | is a kit of pipe 'PX-12', the job wants 'PX-16'; another pipe needs another groove,"
                        + " plan without --was",
                "\"spacing\": 150 | \"spacing\": 140 | has runs 140 mm apart, the job wants 150; nothing of it would stay,"
                        + " plan without --was",
                "\"contract\": 2 | \"contract\": 1 | is by contract 1, this Runbend plans by contract 2; plan its job"
                        + " anew to have one",
                "\"cutLength\": | \"cutlength\": | is no kit.json that Runbend wrote",
                "\"runs\": [ | \"runs\": [{}, | is no kit.json that Runbend wrote",
            })
    void aKitThatDoesNotFitIsOneLine(String written, String instead, String line) throws IOException {
        String text = Files.readString(before);
        assertTrue(text.contains(written), written);
        Path was = Files.writeString(folder.resolve("was.json"), text.replace(written, instead));
        Path job = Files.writeString(folder.resolve("after.yaml"), JOB);
        CommandRun run = CommandRun.of(
                "plan", job.toString(), "--out", folder.resolve("after").toString(), "--was", was.toString());
        assertEquals(2, run.code());
        assertEquals(was + ": " + line, run.err().strip());
        assertFalse(Files.exists(folder.resolve("after")));
    }

    @Test
    void goesWithNoOtherWayToPlan() throws IOException {
        Path job = Files.writeString(folder.resolve("after.yaml"), JOB);
        CommandRun run = CommandRun.of("plan", job.toString(), "--was", "kit.json", "--take", "2");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("--was goes with neither --improve nor --alternatives nor --take"), run.err());
    }

    /** Points along the pipe of a kit, {@value #STEP} mm apart. */
    private static List<double[]> pipe(Path kit) throws IOException {
        List<double[]> points = new ArrayList<>();
        for (JsonIn e :
                JsonIn.read(kit).at("loops").list().get(0).at("elements").list()) {
            double length = e.at("length").number();
            int steps = (int) Math.ceil(length / STEP);
            for (int i = 0; i < steps; i++) {
                points.add(along(e, (i + 0.5) / steps, length / steps));
            }
        }
        return points;
    }

    private static double[] along(JsonIn e, double share, double length) {
        double x = e.at("from").list().get(0).number();
        double y = e.at("from").list().get(1).number();
        if (!e.has("centre")) {
            double toX = e.at("to").list().get(0).number();
            double toY = e.at("to").list().get(1).number();
            return new double[] {x + share * (toX - x), y + share * (toY - y), length};
        }
        double cx = e.at("centre").list().get(0).number();
        double cy = e.at("centre").list().get(1).number();
        double a = Math.toRadians(share * e.at("turn").number());
        return new double[] {
            cx + (x - cx) * Math.cos(a) - (y - cy) * Math.sin(a),
            cy + (x - cx) * Math.sin(a) + (y - cy) * Math.cos(a),
            length
        };
    }

    private static double length(List<double[]> points) {
        return points.stream().mapToDouble(p -> p[2]).sum();
    }

    /** Length of the pipe of one kit that lies off that of another. */
    private static double gone(Path before, Path after) throws IOException {
        List<JsonIn> now =
                JsonIn.read(after).at("loops").list().get(0).at("elements").list();
        return pipe(before).stream()
                .filter(p -> now.stream().noneMatch(e -> distance(p, e) <= SAME))
                .mapToDouble(p -> p[2])
                .sum();
    }

    private static double distance(double[] p, JsonIn e) {
        double[] from = along(e, 0, 0);
        double[] to = along(e, 1, 0);
        double ends = Math.min(Math.hypot(p[0] - from[0], p[1] - from[1]), Math.hypot(p[0] - to[0], p[1] - to[1]));
        if (!e.has("centre")) {
            double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
            double ux = (to[0] - from[0]) / length;
            double uy = (to[1] - from[1]) / length;
            double at = (p[0] - from[0]) * ux + (p[1] - from[1]) * uy;
            return at < 0 || at > length ? ends : Math.abs((p[1] - from[1]) * ux - (p[0] - from[0]) * uy);
        }
        double cx = e.at("centre").list().get(0).number();
        double cy = e.at("centre").list().get(1).number();
        double turn = e.at("turn").number();
        double start = Math.atan2(from[1] - cy, from[0] - cx);
        double angle = Math.toDegrees(Math.atan2(p[1] - cy, p[0] - cx) - start) * Math.signum(turn);
        double turned = ((angle % 360) + 360) % 360;
        return turned > Math.abs(turn)
                ? ends
                : Math.abs(Math.hypot(p[0] - cx, p[1] - cy) - e.at("radius").number());
    }
}
