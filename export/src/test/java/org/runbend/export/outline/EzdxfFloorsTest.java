package org.runbend.export.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfReader;

/** Floors written by ezdxf with corners missed by up to half a millimetre: their areas are those of the shapes meant. */
class EzdxfFloorsTest {
    @TempDir
    Path folder;

    @Test
    void cornersMissedAndSlotsInBlocks() throws IOException {
        Path script = folder.resolve("write.py");
        try (InputStream in = OutsideReader.class.getResourceAsStream("write_floors.py")) {
            Files.write(script, in.readAllBytes());
        }
        List<String> lines = OutsideReader.python(script, List.of("ezdxf"), folder.toString())
                .lines()
                .toList();
        assertEquals(12, lines.size());
        for (String line : lines) {
            String[] cells = line.split("\t", -1);
            // R12 knows no units
            Optional<DrawingUnit> unit = cells[0].contains("R12") ? Optional.of(DrawingUnit.MM) : Optional.empty();
            FloorSketch s = FloorReading.read(
                    cells[0],
                    new DxfReader().read(folder.resolve(cells[0]), Optional.empty()),
                    new OutlineRequest(unit, Optional.empty(), 0.5));
            assertEquals(Double.parseDouble(cells[1]), s.outline().area(), 0.1, cells[0]);
            assertEquals(2, s.obstacles().size(), cells[0]);
            for (Obstacle slot : s.obstacles()) {
                Contour edge = slot.contour().orElseThrow();
                assertEquals(Double.parseDouble(cells[2]), edge.area(), 1e-3, cells[0]);
                assertEquals(4, edge.path().vertices().size(), cells[0]);
            }
            assertTrue(s.guesses().stream().anyMatch(g -> g.contains("were made to meet")), cells[0]);
            assertTrue(JobDraft.text(s, "x.svg").contains("{arc: "), cells[0]);
        }
    }
}
