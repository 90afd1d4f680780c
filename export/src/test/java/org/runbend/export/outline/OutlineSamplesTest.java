package org.runbend.export.outline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfReader;

/** Drawings of one floor in 36 ways, in a folder beside the project, with area and box that others worked out. */
class OutlineSamplesTest {
    private static final double AREA = 600;
    private static final double BOX = 0.2;

    @Test
    void areasAndBoxesAreThoseExpected() throws IOException {
        Path folder = folder();
        int closed = 0;
        List<String> rows = Files.readAllLines(folder.resolve("expected.csv"));
        for (String row : rows.subList(1, rows.size())) {
            // The second and the last column may hold commas; what is wanted lies between, counted from FLOOR.
            String numbers = row.substring(row.indexOf(",FLOOR,") + 7);
            List<String> cells = List.of(numbers.split(",", -1));
            String file = row.substring(0, row.indexOf(','));
            if (cells.get(3).equals("yes")) {
                Contour outline = read(folder.resolve(file)).outline();
                assertEquals(Double.parseDouble(cells.get(0)), area(outline, folder.resolve(file)), AREA, file);
                assertEquals(Double.parseDouble(cells.get(1)), outline.box().width(), BOX, file);
                assertEquals(Double.parseDouble(cells.get(2)), outline.box().height(), BOX, file);
                closed++;
            } else {
                assertThrows(NoOutline.class, () -> read(folder.resolve(file)), file);
            }
        }
        assertTrue(closed >= 30);
    }

    /** The area expected is without the hole where the hole is on the layer of the outline. */
    private static double area(Contour outline, Path file) {
        boolean sameLayer = file.getFileName().toString().contains("hole-samelayer");
        return outline.area()
                - (sameLayer
                        ? read(file).obstacles().get(0).contour().orElseThrow().area()
                        : 0);
    }

    /** A drawing without a unit is in mm here. */
    private static FloorSketch read(Path file) {
        OutlineRequest none = new OutlineRequest(Optional.empty(), Optional.empty(), 0.5);
        try {
            return FloorReading.read("x", new DxfReader().read(file, Optional.empty()), none);
        } catch (NoOutline e) {
            if (!e.getMessage().contains("--drawing-units mm makes a floor of 3.10 x 1.70 m")) {
                throw e;
            }
            OutlineRequest mm = new OutlineRequest(Optional.of(DrawingUnit.MM), Optional.empty(), 0.5);
            return FloorReading.read("x", new DxfReader().read(file, mm.unit()), mm);
        }
    }

    private static Path folder() {
        Path at = Path.of("").toAbsolutePath();
        while (at != null && !Files.isDirectory(at.resolve("shared/data/dxf-samples/own"))) {
            at = at.getParent();
        }
        assumeTrue(at != null, "the folder of sample drawings is not there");
        return at.resolve("shared/data/dxf-samples/own");
    }
}
