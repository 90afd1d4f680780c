package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A cutter follows drawing.dxf of seeded floors, by what its layers and its legend say alone (follow_cuts.py, on ezdxf and
 * shapely), and by the paths that a program of others makes of it (dxf2gcode): it leaves the groove as wide as said within 0.05 mm, no post, no rib, cuts nothing outside, and finds every hole.
 */
class CutFollowerTest {
    /** Of ten in each part; all of them with {@code -Dfollowed.floors=10}. */
    private static final int FLOORS = Integer.getInteger("followed.floors", 3);

    @TempDir
    Path folder;

    /** A seeded floor. */
    private record Floor(String yaml, List<String> holes) {}

    @ParameterizedTest
    @ValueSource(ints = {0, 10, 20, 30})
    void aFollowerCutsTheFloor(int first) throws IOException {
        Files.copy(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG), folder.resolve(PlannedKits.CATALOG));
        List<String> arguments = new ArrayList<>();
        for (int seed = first; seed < first + FLOORS; seed++) {
            arguments.add(cut(seed).toString());
        }
        Path script = OutsideReader.resource(folder, "follow_cuts.py");
        String said = OutsideReader.python(script, List.of("ezdxf", "shapely"), arguments.toArray(String[]::new));
        assertEquals(
                arguments.stream().map(a -> Path.of(a).getFileName() + " ok").collect(Collectors.joining("\n")),
                said.strip());
        followPaths(first, arguments, script);
    }

    /**
     * The same floors by the paths that dxf2gcode makes of R12 and of lines and arcs; of R2000's polylines it makes wrong
     * ones, so those floors are drawn again with lines.
     */
    private void followPaths(int first, List<String> kits, Path script) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(
                "--program", OutsideReader.resource(folder, "run_dxf2gcode.py").toString()));
        for (int i = 0; i < kits.size(); i++) {
            Path kit = Path.of(kits.get(i));
            if (isR2000(first + i) && hasPolylines(first + i)) {
                String holes = Files.readString(kit.resolve("holes.txt"));
                plan(folder.resolve("job" + (first + i) + ".yaml"), kit, form(first + i, "r2000", "lines"));
                Files.writeString(kit.resolve("holes.txt"), holes);
            }
            arguments.add(kit.toString());
        }
        String said = OutsideReader.python(
                script, List.of("ezdxf", "shapely", "dxf2gcode", "PyQt5"), arguments.toArray(String[]::new));
        assertEquals(
                kits.stream().map(a -> Path.of(a).getFileName() + " ok").collect(Collectors.joining("\n")),
                said.strip());
    }

    /** Without its pads the same follower finds posts: it can fail. */
    @Test
    void theFollowerFindsAPost() throws IOException {
        Files.copy(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG), folder.resolve(PlannedKits.CATALOG));
        Path kit = cut(0);
        Path drawing = kit.resolve("drawing.dxf");
        String text = Files.readString(drawing);
        String fewer = text.replaceAll("(\\d+) passes side by side", "1 passes side by side")
                .replaceAll("in (\\d+) rings", "in 0 rings");
        assertTrue(!fewer.equals(text));
        Files.writeString(drawing, fewer);
        String said = OutsideReader.python(
                OutsideReader.resource(folder, "follow_cuts.py"), List.of("ezdxf", "shapely"), kit.toString());
        assertTrue(said.contains("post"), said);
    }

    /** Where no cutter goes into the groove there is no line to follow; one line says what would do. */
    @Test
    void centreWithoutACutterThatGoesInIsRefused() throws IOException {
        String catalog = Files.readString(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG));
        Files.writeString(folder.resolve(PlannedKits.CATALOG), catalog.replace("cutters: [8, 12]", "cutters: [25]"));
        Path job = folder.resolve("job.yaml");
        Files.writeString(job, floor(0, "").yaml());
        Path kit = folder.resolve("kit");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", kit.toString(), "--channel", "centre");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("the thinnest cutter of the catalog 25 mm; give routing.cutters one"), run.err());
        assertTrue(Files.notExists(kit));
    }

    /** Plans the floor of a seed; the form of the drawing goes round. */
    private Path cut(int seed) throws IOException {
        Floor floor = floor(seed, "");
        Path kit = folder.resolve("floor" + seed);
        List<String> holes = new ArrayList<>(floor.holes());
        if (seed % 4 == 3) {
            plan(floor, kit.resolveSibling("first" + seed), seed);
            List<JsonIn> proposed = JsonIn.read(
                            kit.resolveSibling("first" + seed).resolve("kit.json"))
                    .at("port")
                    .at("holes")
                    .list();
            List<String> at = new ArrayList<>();
            for (JsonIn hole : proposed) {
                List<Double> xy =
                        hole.at("at").list().stream().map(JsonIn::number).toList();
                at.add(String.format(
                        Locale.ROOT, "%s: [%.3f, %.3f]", hole.at("kind").text(), xy.get(0), xy.get(1)));
                holes.add(String.format(
                        Locale.ROOT,
                        "%.3f %.3f %.3f",
                        xy.get(0),
                        xy.get(1),
                        hole.at("diameter").number()));
            }
            floor = floor(seed, ", holes: [{" + String.join(", ", at) + "}]");
        }
        plan(floor, kit, seed);
        Files.write(kit.resolve("holes.txt"), holes);
        return kit;
    }

    private void plan(Floor floor, Path kit, int seed) throws IOException {
        Path job = folder.resolve("job" + seed + ".yaml");
        Files.writeString(job, floor.yaml());
        plan(job, kit, form(seed, isR2000(seed) ? "r2000" : "r12", hasPolylines(seed) ? "polylines" : "lines"));
    }

    private static void plan(Path job, Path kit, List<String> form) {
        List<String> words = new ArrayList<>(List.of("plan", job.toString(), "--out", kit.toString()));
        words.addAll(form);
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertTrue(run.code() <= 1, () -> job + ": " + run.err());
    }

    private static boolean isR2000(int seed) {
        return seed % 2 == 0;
    }

    private static boolean hasPolylines(int seed) {
        return seed % 5 < 3;
    }

    private static List<String> form(int seed, String version, String contours) {
        String channel = seed % 3 == 2 ? "centre" : "contour";
        return List.of("--channel", channel, "--dxf", version, "--contours", contours);
    }

    /** A floor of 0.9 to 1.9 m with a notch or a slanted corner, a drain, a vent, and bolts, one without a size. */
    private static Floor floor(int seed, String given) {
        Random random = new Random(seed);
        int width = 1300 + 10 * random.nextInt(60);
        int depth = 950 + 10 * random.nextInt(40);
        int bite = 200 + 10 * random.nextInt(20);
        String corner =
                switch (seed % 3) {
                    case 0 -> "[" + width + ", " + depth + "]";
                    case 1 -> "[" + width + ", " + (depth - bite) + "], [" + (width - bite) + ", " + depth + "]";
                    default ->
                        "[" + width + ", " + (depth - bite) + "], [" + (width - bite) + ", " + (depth - bite) + "], ["
                                + (width - bite) + ", " + depth + "]";
                };
        double drain = 20 + random.nextInt(30);
        int x = width / 2 + random.nextInt(100);
        int y = depth / 2 + random.nextInt(100);
        String[] pipes = {"PX-16", "PX-12", "PX-10"};
        String[] plates = {"SP-1", "SP-12", "SP-10"};
        int kind = random.nextInt(3);
        String yaml = "job: Floor " + seed + "\norder: F-" + seed + "\ncatalog: workshop.yaml\n"
                + "floor:\n  outline: [[0, 0], [" + width + ", 0], " + corner + ", [0, " + depth + "]]\n"
                + "  port: {at: [0, " + depth / 2 + "]" + given + "}\n  keepOut:\n"
                + "    - {name: drain, kind: drain, circle: {centre: [" + x + ", " + y + "], radius: " + drain + "}}\n"
                + "    - {name: seat bolt, kind: bolt, circle: {centre: [" + (width - 400) + ", 300], radius: 9}}\n"
                + "    - {name: old bolt, kind: bolt, point: [" + (width - 300) + ", 600]}\n"
                + "pipe: {product: " + pipes[kind] + "}\nplates: {product: [" + plates[kind] + "]}\n";
        return new Floor(
                yaml,
                List.of(
                        String.format(Locale.ROOT, "%d %d %.1f", x, y, 2 * drain),
                        String.format(Locale.ROOT, "%d 300 18", width - 400)));
    }
}
