package org.runbend.optimizer.heat.field;

import java.util.BitSet;

/** Temperatures of a floor's surface, and where its heat goes. */
public final class FieldSolution {
    private final RasterFrame frame;
    private final BitSet floor;
    private final double[] surface;
    private final Balance balance;
    private final double area;

    /**
     * Heat of the floor.
     *
     * @param given by the coolant to the floor, W
     * @param upward into the room, W
     * @param downward from the floor to the outside, W
     * @param straightDown from the pipe straight to the outside, W; in none of the others
     */
    public record Balance(double given, double upward, double downward, double straightDown) {}

    private FieldSolution(RasterFrame frame, BitSet floor, double[] surface, Balance balance, double area) {
        this.frame = frame;
        this.floor = floor;
        this.surface = surface;
        this.balance = balance;
        this.area = area;
    }

    /** Means over the four cells that were reckoned for each one; it is floor where two of them are. */
    static FieldSolution of(
            RasterFrame frame, boolean[] fineFloor, double[] excess, double room, double share, Balance balance) {
        int columns = frame.columns();
        BitSet floor = new BitSet(columns * frame.rows());
        double[] surface = new double[columns * frame.rows()];
        int fine = 0;
        for (int i = 0; i < surface.length; i++) {
            double sum = 0;
            int count = 0;
            for (int k = 0; k < 4; k++) {
                int at = (2 * (i / columns) + k / 2) * 2 * columns + 2 * (i % columns) + k % 2;
                if (fineFloor[at]) {
                    sum += excess[at];
                    count++;
                }
            }
            fine += count;
            floor.set(i, count >= 2);
            surface[i] = room + (count >= 2 ? sum / count * share : 0);
        }
        return new FieldSolution(frame, floor, surface, balance, fine * frame.area() / 4);
    }

    /** Where the cells lie. */
    public RasterFrame frame() {
        return frame;
    }

    /** Where its heat goes. */
    public Balance balance() {
        return balance;
    }

    /** Whether a cell is floor. */
    public boolean isFloor(int column, int row) {
        return floor.get(row * frame.columns() + column);
    }

    /** Surface of a cell, degrees C; the room's where no floor is. */
    public double surface(int column, int row) {
        return surface[row * frame.columns() + column];
    }

    /** Mean of the surface, degrees C. */
    public double mean() {
        return floor.stream().mapToDouble(i -> surface[i]).average().orElse(surface[0]);
    }

    /** Hottest cell, degrees C. */
    public double peak() {
        return floor.stream().mapToDouble(i -> surface[i]).max().orElse(surface[0]);
    }

    /** Coldest cell, degrees C. */
    public double least() {
        return floor.stream().mapToDouble(i -> surface[i]).min().orElse(surface[0]);
    }

    /** Area of the floor as its cells have it, m2. */
    public double area() {
        return area;
    }
}
