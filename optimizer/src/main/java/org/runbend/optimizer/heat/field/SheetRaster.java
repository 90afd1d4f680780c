package org.runbend.optimizer.heat.field;

/**
 * How well floor carries heat sideways, in quarters of a cell, so that the edge of a plate lies where it is and not where a cell ends:
 * between two cells heat passes the quarters one after the other.
 */
final class SheetRaster {
    private static final int PARTS = 4;
    private static final int HALF = PARTS / 2;
    /** Floor without any cover still carries a little in its own surface; 0 would cut the equations apart. */
    private static final double LEAST = 1e-6;

    private final int width;
    private final float[] sheet;

    SheetRaster(FieldProblem problem, RasterFrame frame) {
        RasterFrame fine = new RasterFrame(
                frame.x(), frame.y(), frame.cell() / PARTS, frame.columns() * PARTS, frame.rows() * PARTS);
        width = fine.columns();
        sheet = new float[fine.columns() * fine.rows()];
        for (Band plate : problem.plates()) {
            double cells = plate.length() * (plate.left() + plate.right()) / (fine.cell() * fine.cell());
            Strewing.over(plate, fine.cell() / 2, (x, y, part, along) -> {
                int cell = fine.at(x, y);
                if (cell >= 0) {
                    sheet[cell] += (float) (part * cells);
                }
            });
        }
        double cover = Math.max(LEAST, problem.stack().sideways());
        double plated = problem.plate().sideways() + cover / 2;
        for (int i = 0; i < sheet.length; i++) {
            double share = Math.min(1, sheet[i]);
            sheet[i] = (float) (share * plated + (1 - share) * cover);
        }
    }

    /** From the centre of a cell to that of its neighbour to the right, W/K. */
    double toTheRight(int column, int row) {
        double resistance = 0;
        for (int i = HALF; i < PARTS + HALF; i++) {
            double sum = 0;
            for (int j = 0; j < PARTS; j++) {
                sum += sheet[(row * PARTS + j) * width + column * PARTS + i];
            }
            resistance += 1 / sum;
        }
        return 1 / resistance;
    }

    /** From the centre of a cell to that of its neighbour above, W/K. */
    double upwards(int column, int row) {
        double resistance = 0;
        for (int j = HALF; j < PARTS + HALF; j++) {
            double sum = 0;
            for (int i = 0; i < PARTS; i++) {
                sum += sheet[(row * PARTS + j) * width + column * PARTS + i];
            }
            resistance += 1 / sum;
        }
        return 1 / resistance;
    }
}
