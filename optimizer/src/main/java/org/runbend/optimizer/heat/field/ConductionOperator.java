package org.runbend.optimizer.heat.field;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealLinearOperator;
import org.hipparchus.linear.RealVector;

/**
 * The balance of each cell of floor as a symmetric, positive definite matrix: five values a row, kept as three diagonals. Between
 * two cells heat passes as {@link SheetRaster} says.
 */
final class ConductionOperator implements RealLinearOperator {
    private final int columns;
    private final double[] right;
    private final double[] above;
    private final double[] diagonal;

    /** With what a square metre loses up and down together, W/(m2 K). */
    ConductionOperator(ZoneRaster raster, double loss) {
        columns = raster.frame.columns();
        int n = raster.floor.length;
        right = new double[n];
        above = new double[n];
        diagonal = new double[n];
        double area = raster.frame.area();
        for (int i = 0; i < n; i++) {
            // A cell without floor balances by itself at 0.
            diagonal[i] += raster.floor[i] ? raster.coupling[i] + loss * area : 1;
            if ((i + 1) % columns != 0) {
                right[i] = join(raster, i, i + 1, raster.sheet.toTheRight(i % columns, i / columns));
            }
            if (i + columns < n) {
                above[i] = join(raster, i, i + columns, raster.sheet.upwards(i % columns, i / columns));
            }
        }
    }

    private double join(ZoneRaster raster, int i, int j, double g) {
        if (!raster.floor[i] || !raster.floor[j]) {
            return 0;
        }
        diagonal[i] += g;
        diagonal[j] += g;
        return g;
    }

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

    /** Division by the diagonal, the preconditioner of Jacobi. */
    RealLinearOperator jacobi() {
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
                double[] y = x.toArray();
                for (int i = 0; i < y.length; i++) {
                    y[i] /= diagonal[i];
                }
                return new ArrayRealVector(y, false);
            }
        };
    }
}
