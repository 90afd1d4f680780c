package org.runbend.export.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.export.DemoPlan;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.optimizer.plan.KitPlan;

/** Tiles laid cross on cross show one drawing, in actual size. Places are read from the operators of the pages. */
class FullSizePaperTest {
    private static final double CROSS = 10;

    private final KitPlan plan = DemoPlan.plan();
    private final Sheet drawing = new FloorDrafting(GrooveForm.EDGE).drawToMarkOut(plan, plan.setOut(), 2);

    /** Whatever two neighbouring pages both draw lies on itself within 0.3 mm once their crosses do. */
    @Test
    void neighboursAgree() throws IOException {
        List<PdfMarks> pages = PdfMarks.of(FullSizePaper.bytes(plan, drawing, FullSizePaper.Page.A3));
        int tiles = pages.size() - 1;
        assertEquals(FullSizePaper.pages(drawing, FullSizePaper.Page.A3), tiles);
        assertTrue(tiles > 5, "tiles: " + tiles);
        int besides = 0;
        for (int i = 1; i < tiles; i++) {
            List<double[]> left = crosses(pages.get(i));
            List<double[]> right = crosses(pages.get(i + 1));
            double dx = left.get(1)[0] - right.get(0)[0];
            double dy = left.get(1)[1] - right.get(0)[1];
            boolean sameRow = Math.abs(shift(pages, i)[0] - dx) < 0.3 && Math.abs(shift(pages, i)[1] - dy) < 0.3;
            besides += sameRow ? 1 : 0;
        }
        // the last page of a row and the first of the next are no neighbours side by side
        int rows = tiles - besides;
        assertEquals(0, tiles % rows, besides + " of " + tiles + " lie side by side");
        for (int i = 1; i + tiles / rows <= tiles; i++) {
            int below = i + tiles / rows;
            double dx =
                    crosses(pages.get(i)).get(0)[0] - crosses(pages.get(below)).get(2)[0];
            double dy =
                    crosses(pages.get(i)).get(0)[1] - crosses(pages.get(below)).get(2)[1];
            double[] first = pages.get(i).ends().get(0);
            double[] again = pages.get(below).ends().get(0);
            assertEquals(dx, first[0] - again[0], 0.3);
            assertEquals(dy, first[1] - again[1], 0.3);
        }
    }

    /** How far all that two pages draw alike is shifted; every part by as much as the first. */
    private static double[] shift(List<PdfMarks> pages, int i) {
        List<double[]> a = pages.get(i).ends();
        List<double[]> b = pages.get(i + 1).ends();
        double dx = a.get(0)[0] - b.get(0)[0];
        double dy = a.get(0)[1] - b.get(0)[1];
        int same = a.size() - 16; // four crosses of two lines each stand last
        for (int k = 0; k < same; k++) {
            assertEquals(dx, a.get(k)[0] - b.get(k)[0], 0.3);
            assertEquals(dy, a.get(k)[1] - b.get(k)[1], 0.3);
        }
        return new double[] {dx, dy};
    }

    /** Middles of the four crosses: lower left, lower right, upper left, upper right. */
    private static List<double[]> crosses(PdfMarks page) {
        List<double[]> ends =
                page.ends().subList(page.ends().size() - 16, page.ends().size());
        List<double[]> middles = new ArrayList<>();
        for (int i = 0; i < 16; i += 4) {
            assertEquals(CROSS, ends.get(i + 1)[0] - ends.get(i)[0], 0.01);
            assertEquals(CROSS, ends.get(i + 3)[1] - ends.get(i + 2)[1], 0.01);
            middles.add(new double[] {ends.get(i + 2)[0], ends.get(i)[1]});
        }
        return middles;
    }

    /** The bar on each tile is 100 mm long by its own operator, and the drawing is as large as the floor. */
    @Test
    void isActualSize() throws IOException {
        List<PdfMarks> tiles = PdfMarks.of(FullSizePaper.bytes(plan, drawing, FullSizePaper.Page.A3));
        for (PdfMarks tile : tiles.subList(1, tiles.size())) {
            assertEquals(1, tile.rectanglesOfWidth(100));
        }
        PdfMarks plotted = PdfMarks.of(FullSizePaper.bytes(plan, drawing, FullSizePaper.Page.PLOTTER))
                .get(0);
        assertEquals(1, plotted.rectanglesOfWidth(100));
        Extent size = drawing.extent();
        double least = plotted.ends().stream().mapToDouble(e -> e[0]).min().orElseThrow();
        double most = plotted.ends().stream().mapToDouble(e -> e[0]).max().orElseThrow();
        assertTrue(most - least <= size.width() + 0.3 && most - least > 1500, "width " + (most - least));
    }
}
