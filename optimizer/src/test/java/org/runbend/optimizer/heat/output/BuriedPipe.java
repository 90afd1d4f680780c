package org.runbend.optimizer.heat.output;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.ConjugateGradient;
import org.hipparchus.linear.RealLinearOperator;
import org.hipparchus.linear.RealVector;

/**
 * A pipe in a groove without a plate by two-dimensional finite volumes of half a millimetre: half a spacing wide, cover over the crown,
 * air in the groove above the pipe's middle, wall of 2 mm, foam. The bore is at the coolant's temperature.
 */
final class BuriedPipe {
    private static final double CELL = 0.5;
    private static final double AIR = 0.025;
    private static final double PLY = 0.13;
    private static final double FOAM = 0.034;
    private static final double WALL = 0.35;
    private static final double PINNED = 1e9;

    private final int columns;
    private final int rows;
    private final double[] right;
    private final double[] above;
    private final double[] diagonal;
    private final boolean[] bore;
    private final double top;
    private final double bottom;

    BuriedPipe(double outer, double ply, double foam, double spacing) {
        columns = (int) Math.round(spacing / 2 / CELL);
        int under = (int) Math.round((outer + foam) / CELL);
        rows = under + (int) Math.round(ply / CELL);
        int n = columns * rows;
        right = new double[n];
        above = new double[n];
        diagonal = new double[n];
        bore = new boolean[n];
        double[] conductivity = new double[n];
        for (int i = 0; i < n; i++) {
            double x = (i % columns + 0.5) * CELL;
            double row = Math.floor((double) i / columns);
            double y = (row + 0.5 - under) * CELL;
            double r = Math.hypot(x, y + outer / 2);
            bore[i] = r < outer / 2 - 2;
            boolean groove = y < 0 && y > -outer / 2 && x < outer / 2;
            conductivity[i] = r < outer / 2 ? bore[i] ? 1000 : WALL : y > 0 ? PLY : groove ? AIR : FOAM;
        }
        top = CELL / 1000 / (1 / 10.8 + CELL / 2000 / PLY);
        bottom = CELL / 1000 / (0.04 + CELL / 2000 / FOAM);
        for (int i = 0; i < n; i++) {
            if ((i + 1) % columns != 0) {
                right[i] = join(conductivity, i, i + 1);
            }
            if (i + columns < n) {
                above[i] = join(conductivity, i, i + columns);
            }
            diagonal[i] += bore[i] ? PINNED : 0;
            diagonal[i] += i < columns ? bottom : 0;
            diagonal[i] += i >= n - columns ? top : 0;
        }
    }

    private double join(double[] conductivity, int i, int j) {
        double g = 2 / (1 / conductivity[i] + 1 / conductivity[j]);
        diagonal[i] += g;
        diagonal[j] += g;
        return g;
    }

    /** Heat up and down for each square metre, W/m2. */
    double[] solve(double coolant, double room, double outside) {
        int n = columns * rows;
        double[] load = new double[n];
        for (int i = 0; i < n; i++) {
            load[i] = (bore[i] ? PINNED * coolant : 0)
                    + (i < columns ? bottom * outside : 0)
                    + (i >= n - columns ? top * room : 0);
        }
        double[] t = new ConjugateGradient(50_000, 1e-13, false)
                .solve(operator(false), operator(true), new ArrayRealVector(load, false))
                .toArray();
        double up = 0;
        double down = 0;
        for (int i = 0; i < columns; i++) {
            down += bottom * (t[i] - outside);
            up += top * (t[n - columns + i] - room);
        }
        double width = columns * CELL / 1000;
        return new double[] {up / width, down / width};
    }

    private RealLinearOperator operator(boolean inverseDiagonal) {
        return new RealLinearOperator() {
            @Override
            public int getRowDimension() {
                return diagonal.length;
            }

            @Override
            public int getColumnDimension() {
                return diagonal.length;
            }

            @Override
            public RealVector operate(RealVector x) {
                double[] v = x.toArray();
                double[] y = new double[v.length];
                for (int i = 0; i < v.length; i++) {
                    if (inverseDiagonal) {
                        y[i] = v[i] / diagonal[i];
                        continue;
                    }
                    y[i] += diagonal[i] * v[i];
                    if (right[i] != 0) {
                        y[i] -= right[i] * v[i + 1];
                        y[i + 1] -= right[i] * v[i];
                    }
                    if (above[i] != 0) {
                        y[i] -= above[i] * v[i + columns];
                        y[i + columns] -= above[i] * v[i];
                    }
                }
                return new ArrayRealVector(y, false);
            }
        };
    }
}
