package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The boards of an example as a machine cuts them and a fitter lays them: ezdxf reads, shapely cuts and puts together. */
@ExtendWith(PlannedKits.Supply.class)
class BoardsCommandTest {
    private static final Path JOB = PlannedKits.EXAMPLES.resolve("ways-in/boards-hut.yaml");

    @TempDir
    Path folder;

    private final PlannedKits kits;

    BoardsCommandTest(PlannedKits kits) {
        this.kits = kits;
    }

    /**
     * Each layer: nothing is cut where no groove is, every groove is cut within 0.05 mm, and the gaps between parts that are put
     * back are the 1 mm asked for; no file has an open, double or empty line.
     */
    @Test
    void partsGoBackWithTheirGrooves() throws IOException {
        Path kit = kits.folder(JOB);
        List<String> said = OutsideReader.python(
                        OutsideReader.resource(folder, "lay_boards.py"), List.of("ezdxf", "shapely"), kit.toString())
                .lines()
                .toList();
        assertEquals("shapes 0", said.get(said.size() - 1));
        assertEquals(
                "tight 0",
                said.stream().filter(s -> s.startsWith("tight")).findFirst().orElseThrow());
        List<String> layers = said.stream()
                .filter(s -> s.startsWith("insulation") || s.startsWith("routed") || s.startsWith("cover"))
                .toList();
        assertEquals(3, layers.size(), said::toString);
        for (String layer : layers) {
            String[] words = layer.split(" ", -1);
            assertTrue(Integer.parseInt(words[1]) > 1, layer);
            assertTrue(Double.parseDouble(words[2]) < 0.05, "cut off the grooves: " + layer);
            assertTrue(Double.parseDouble(words[3]) < 0.05, "grooves not cut: " + layer);
            assertEquals(1, Double.parseDouble(words[4]), 0.01, layer);
        }
    }

    /** One note a board, the layers' names with tool and depth, and the sizes in kit.json. */
    @Test
    void filesSayWhatTheyAre() throws IOException {
        Path kit = kits.folder(JOB);
        JsonIn boards = kits.kit(JOB).at("boards");
        assertEquals(30 + 21 + 12, boards.at("height").number(), 1e-9);
        // 30 mm of 32 kg/m3, 33 mm of 680 kg/m3 in the demo catalog
        assertEquals(0.03 * 32 + 0.033 * 680, boards.at("weightPerSquareMetre").number(), 1e-3);
        int files = 0;
        for (JsonIn layer : boards.at("layers").list()) {
            assertTrue(layer.at("bound").number()
                    <= layer.at("boundForJointsTried").number());
            assertTrue(layer.at("boundForJointsTried").number()
                    <= layer.at("bought").number());
            files += (int) layer.at("bought").number();
        }
        for (int i = 1; i <= files; i++) {
            String name = (i <= boards.at("layers").list().get(0).at("bought").number() ? "foam-300" : "birch-ply");
            assertTrue(Files.exists(kit.resolve("boards-" + name + "-01.dxf")));
        }
        String dxf = Files.readString(kit.resolve("boards-birch-ply-01.dxf"));
        assertTrue(dxf.contains("\nPOCKET_D12_Z16P5\n") && dxf.contains("\nCUT_D12_Z21\n"), "layers");
        assertTrue(dxf.contains("channel face up") && dxf.contains("order KC-2066"), "note");
        assertTrue(Files.readString(kit.resolve("boards.svg")).contains("R1 ("));
    }
}
