package org.runbend.optimizer.heat.field;

import java.util.function.ToDoubleFunction;

/**
 * Where the cells lie: column by column to the right, row by row upwards.
 *
 * @param x left edge, mm
 * @param y lower edge, mm
 * @param cell edge of a cell, mm
 * @param columns how many
 * @param rows how many
 */
public record RasterFrame(double x, double y, double cell, int columns, int rows) {
    private static final int SAFE = 1_000_000;

    /** Cells over a floor. */
    static RasterFrame of(Ring floor, double cell) {
        double x = least(floor, Ring.Corner::x);
        double y = least(floor, Ring.Corner::y);
        double width = -least(floor, c -> -c.x()) - x;
        double height = -least(floor, c -> -c.y()) - y;
        return new RasterFrame(x, y, cell, count(width, cell), count(height, cell));
    }

    private static int count(double length, double cell) {
        return (int) Math.max(1, Math.min(SAFE, Math.ceil(length / cell - 1e-9)));
    }

    private static double least(Ring floor, ToDoubleFunction<Ring.Corner> value) {
        return floor.corners().stream().mapToDouble(value).min().orElseThrow();
    }

    /** The same with four cells for each. */
    RasterFrame halved() {
        return new RasterFrame(x, y, cell / 2, 2 * columns, 2 * rows);
    }

    /** Cells in all. */
    public double size() {
        return (double) columns * rows;
    }

    /** Area of a cell, m2. */
    double area() {
        return cell * cell * 1e-6;
    }

    /** Index of the cell round a point, or -1 outside the raster. */
    int at(double px, double py) {
        int column = (int) Math.floor((px - x) / cell);
        int row = (int) Math.floor((py - y) / cell);
        return column < 0 || row < 0 || column >= columns || row >= rows ? -1 : row * columns + column;
    }

    /** Centre of a cell, mm. */
    double centreX(int column) {
        return x + (column + 0.5) * cell;
    }

    /** Centre of a cell, mm. */
    double centreY(int row) {
        return y + (row + 0.5) * cell;
    }
}
