package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.cli.DrawnLoops;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.folder.KitFiles;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/**
 * The boards of two floors as a machine cuts them and a fitter lays them: ezdxf reads, shapely cuts and puts together, other
 * readers count, dxf2gcode makes paths.
 */
@ExtendWith(PlannedKits.Supply.class)
class BoardsCommandTest {
    private static final Path JOB = PlannedKits.EXAMPLES.resolve("ways-in/boards-hut.yaml");

    /** What a cutter may be out, mm2: 0.05 mm were taken off before areas are measured, the rest is chords. */
    private static final double NOTHING = 0.05;

    @TempDir
    static Path folder;

    private final PlannedKits kits;

    BoardsCommandTest(PlannedKits kits) {
        this.kits = kits;
    }

    /** Edge 1 of the hut is left longer to be fitted by hand. */
    @Test
    void partsOfTheHutGoBackWithTheirGrooves() throws IOException {
        Path kit = kits.folder(JOB);
        Map<String, double[]> laid = lay(kit, "1");
        assertLaid(laid, List.of("insulation", "routed", "cover"), 1, 2);
        assertTrue(laid.get("routed crossings")[0] > 3, laid.keySet()::toString);
        assertReadAlike(kit);
        assertPaths(kit, lines(kits.plan(JOB), "hut-lines"));
    }

    /**
     * A slanted wall, a post, a vent, holes that are given and so slots beside them, and a material whose name no file system
     * takes. The post stands on a joint, the slots are cut through.
     */
    @Test
    void partsOfAnotherFloorDoSo() throws IOException {
        String shop = Files.readString(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG))
                .replace("sku: birch-ply", "sku: 'Birke: 21/A*'")
                .replace("length: 2500, width: 1250, thickness: 21", "length: 1000, width: 1250, thickness: 21");
        Files.writeString(folder.resolve("shop.yaml"), shop);
        Path job = Files.writeString(folder.resolve("ell.yaml"), """
                job: Ell
                order: B-1
                catalog: shop.yaml
                floor:
                  outline: [[0, 0], [1700, 0], [1700, 700], [1250, 1000], [0, 1000]]
                  keepOut:
                    - {name: post, kind: pillar, polygon: [[600, 480], [660, 480], [660, 540], [600, 540]], clearance: 30}
                    - {name: vent, kind: vent, circle: {centre: [1450, 250], radius: 35}}
                  port: {at: [0, 400], holes: [{flow: [75, 375], return: [75, 525]}]}
                layout: {spacing: 150, edge: 75}
                pipe: {product: PX-12}
                plates: {product: [SP-12]}
                build:
                  insulation: 20
                  board: {material: 'Birke: 21/A*', thickness: 21}
                  boards: {perimeterGap: 3, jointGap: 0.5, tolerance: 3}
                """);
        KitPlan plan = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty(), new DrawnLoops()));
        Path kit = write(plan, "ell", DxfVersion.R2000, false);
        assertTrue(Files.exists(kit.resolve("boards").resolve("birke-21-a-01.dxf")), "a name for all file systems");
        Map<String, double[]> laid = lay(kit);
        assertLaid(laid, List.of("insulation", "routed"), 0.5, 3);
        assertTrue(laid.get("routed crossings")[0] > 3, laid.keySet()::toString);
        assertReadAlike(kit);
        assertPaths(kit, lines(plan, "ell-lines"));
    }

    /** The same cutter with layers that say another tool finds grooves that are not cut: it can fail. */
    @Test
    void theCutterFindsAWrongTool() throws IOException {
        Path kit = Files.createDirectories(folder.resolve("wrong").resolve("boards"))
                .getParent();
        try (Stream<Path> files = Files.walk(kits.folder(JOB))) {
            for (Path f :
                    files.filter(f -> f.toString().matches(".*\\.(json|dxf)")).toList()) {
                String text = Files.readString(f).replace("POCKET_D12_", "POCKET_D18_");
                Files.writeString(kit.resolve(kits.folder(JOB).relativize(f)), text);
            }
        }
        Map<String, double[]> laid = lay(kit, "1");
        assertTrue(laid.get("routed lack")[0] > 1000, "grooves of 17.5 mm and a cutter of 18");
    }

    private Map<String, double[]> lay(Path kit, String... longer) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(kit.toString()));
        arguments.addAll(List.of(longer));
        Map<String, double[]> said = new TreeMap<>();
        OutsideReader.python(
                        OutsideReader.resource(folder, "lay_boards.py"),
                        List.of("ezdxf", "shapely"),
                        arguments.toArray(String[]::new))
                .lines()
                .map(l -> l.split(" ", -1))
                .forEach(w -> said.put(
                        w[0] + " " + w[1],
                        Arrays.stream(w, 2, w.length)
                                .filter(v -> v.matches("[-0-9.]+"))
                                .mapToDouble(Double::parseDouble)
                                .toArray()));
        return said;
    }

    /**
     * Nothing is spoilt, cut beyond the grooves or left; gaps at joints are those asked for, those at walls what kit.json says
     * and the tolerance; parts go into a floor smaller by the tolerance; pipe passes every joint with boards shifted by 1 mm.
     */
    private static void assertLaid(Map<String, double[]> laid, List<String> layers, double gap, double tolerance) {
        for (String layer : layers) {
            assertEquals(0, laid.get(layer + " odd")[0], layer + " odd");
            assertEquals(0, laid.get(layer + " spoilt")[0], NOTHING, layer + " spoilt");
            assertEquals(gap, laid.get(layer + " joint")[0], 0.01, layer);
            assertEquals(gap, laid.get(layer + " joint")[1], 0.01, layer);
            double[] wall = laid.get(layer + " wall");
            assertEquals(wall[2] + tolerance, wall[0], 0.05, layer);
            assertEquals(wall[2] + tolerance, wall[1], 0.05, layer);
            assertEquals(0, laid.get(layer + " stuck")[0], NOTHING, layer + " stuck");
        }
        assertEquals(0, laid.get("routed over")[0], NOTHING, "cut off the grooves");
        assertEquals(0, laid.get("routed lack")[0], NOTHING, "grooves not cut");
        assertEquals(1, laid.get("routed flare")[0], 0.02, "flares over 20 mm on each side of a joint");
        assertEquals(0, laid.get("routed tight")[0], "joints that pipe does not pass");
    }

    /** ezdxf, dime, dxflib and npm's dxf-parser find as many things on each layer; lines are as long for the two that measure. */
    private static void assertReadAlike(Path kit) throws IOException {
        Path counter = OutsideReader.resource(folder, "count_layers.py");
        Path script = OutsideReader.resource(folder, "read_dxf.js");
        List<Path> files = drawings(kit);
        String[] names = files.stream().map(Path::toString).toArray(String[]::new);
        String[] read = OutsideReader.python(counter, List.of("ezdxf"), names).split("file\n", -1);
        for (int f = 0; f < files.size(); f++) {
            Path file = files.get(f);
            List<String> found = read[f + 1].lines().toList();
            List<String> again = OutsideReader.node(script, "dxf-parser", file.toString())
                    .lines()
                    .toList();
            assertEquals(found.size(), again.size(), () -> found + " and " + again);
            for (int i = 0; i < found.size(); i++) {
                if (!found.get(i).startsWith("length")) {
                    assertEquals(found.get(i), again.get(i), file::toString);
                    continue;
                }
                String[] a = found.get(i).split(" ", -1);
                String[] b = again.get(i).split(" ", -1);
                assertEquals(a[1], b[1], file::toString);
                assertEquals(Double.parseDouble(a[2]), Double.parseDouble(b[2]), 0.01, file::toString);
            }
            List<String> counts =
                    found.stream().filter(l -> !l.startsWith("length")).toList();
            for (String reader : List.of("dime", "dxflib")) {
                assertEquals(
                        counts,
                        OutsideReader.runCompiled(program(reader), file.toString())
                                .lines()
                                .toList(),
                        reader + " of " + file);
            }
        }
    }

    private static Path program(String library) throws IOException {
        Path program = folder.resolve("count_" + library);
        return Files.exists(program) ? program : OutsideReader.compiled(folder, "count_" + library + ".cpp", library);
    }

    /** dxf2gcode: each line once, closed, around the same area, arcs as arcs. */
    private static void assertPaths(Path kit, Path lines) throws IOException {
        OutsideReader.resource(folder, "follow_cuts.py");
        List<String> said = OutsideReader.python(
                        OutsideReader.resource(folder, "follow_boards.py"),
                        List.of("ezdxf", "shapely", "dxf2gcode", "PyQt5"),
                        OutsideReader.resource(folder, "run_dxf2gcode.py").toString(),
                        kit.resolve("boards").toString(),
                        lines.resolve("boards").toString())
                .lines()
                .toList();
        assertEquals(drawings(kit).size(), said.size(), said::toString);
        for (String line : said) {
            assertTrue(line.matches("[a-z0-9-]+ [1-9][0-9]*"), line);
        }
    }

    private static List<Path> drawings(Path kit) throws IOException {
        try (Stream<Path> files = Files.list(kit.resolve("boards"))) {
            return files.sorted().toList();
        }
    }

    private static Path lines(KitPlan plan, String name) throws IOException {
        return write(plan, name, DxfVersion.R12, true);
    }

    private static Path write(KitPlan plan, String name, DxfVersion version, boolean inParts) throws IOException {
        Path kit = folder.resolve(name);
        Files.createDirectories(kit.resolve("boards"));
        Map<String, byte[]> files = KitFiles.of(plan, new KitFiles.DrawingForm(version, true, inParts), Map.of());
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Files.write(kit.resolve(file.getKey()), file.getValue());
        }
        return kit;
    }

    /** One note a board, the layers' names with tool and depth, and the sizes in kit.json. */
    @Test
    void filesSayWhatTheyAre() throws IOException {
        Path kit = kits.folder(JOB);
        JsonIn boards = kits.kit(JOB).at("boards");
        assertEquals(30 + 21 + 12, boards.at("height").number(), 1e-9);
        // 30 mm of 32 kg/m3, 33 mm of 680 kg/m3 in the demo catalog
        assertEquals(0.03 * 32 + 0.033 * 680, boards.at("weightPerSquareMetre").number(), 1e-3);
        List<String> files = new ArrayList<>();
        for (JsonIn layer : boards.at("layers").list()) {
            assertTrue(layer.at("bound").number()
                    <= layer.at("boundForJointsTried").number());
            assertTrue(layer.at("boundForJointsTried").number()
                    <= layer.at("bought").number());
            layer.at("files").list().forEach(f -> files.add(f.text()));
            assertEquals(layer.at("bought").number(), layer.at("files").list().size());
        }
        assertEquals(
                files.stream().sorted().toList(),
                drawings(kit).stream().map(f -> "boards/" + f.getFileName()).toList());
        List<String> listed = new ArrayList<>();
        kits.kit(JOB).at("files").list().forEach(f -> listed.add(f.text()));
        assertTrue(listed.containsAll(files), listed::toString);
        String dxf = Files.readString(kit.resolve("boards").resolve("birch-ply-01.dxf"));
        assertTrue(dxf.contains("\nPOCKET_D12_Z16P5\n") && dxf.contains("\nCUT_D12_Z21\n"), "layers");
        for (String word : List.of(
                "Birch plywood, 21 mm thick, 2500 x 1250 mm: birch-ply-01, board 1 of 2, cut 1",
                "channel face up: channels 16.5 mm deep from the top, tool dia 12, inside",
                "grain along x",
                "walls 6 and 2 for the tolerance of the measured floor",
                "order KC-2066, fingerprint "
                        + kits.kit(JOB).at("fingerprint").text().substring(0, 12))) {
            assertTrue(dxf.contains(word), word);
        }
        assertTrue(Files.readString(kit.resolve("boards.svg")).contains("C1 (0"));
    }
}
