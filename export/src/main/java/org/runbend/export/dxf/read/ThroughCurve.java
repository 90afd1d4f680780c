package org.runbend.export.dxf.read;

/**
 * A smooth curve through points of the plane: the cubic spline with continuous curvature over the chord length. Ends have
 * the tangents given, or no curvature (textbook: tridiagonal system for the slopes).
 */
final class ThroughCurve {
    private final double[] xy;
    private final double[] at;
    private final double[] slopeX;
    private final double[] slopeY;

    /** {@code xy} holds x, y of each of two or more points, neighbours different; an empty tangent is none. */
    ThroughCurve(double[] xy, double[] startTangent, double[] endTangent) {
        this.xy = xy;
        int n = xy.length / 2;
        at = new double[n];
        for (int i = 1; i < n; i++) {
            double dx = xy[2 * i] - xy[2 * i - 2];
            double dy = xy[2 * i + 1] - xy[2 * i - 1];
            at[i] = at[i - 1] + Math.sqrt(dx * dx + dy * dy);
        }
        slopeX = slopes(0, unit(startTangent, 0), unit(endTangent, 0));
        slopeY = slopes(1, unit(startTangent, 1), unit(endTangent, 1));
    }

    private static double unit(double[] tangent, int axis) {
        if (tangent.length == 0) {
            return Double.NaN;
        }
        double length = Math.sqrt(tangent[0] * tangent[0] + tangent[1] * tangent[1]);
        return length > 0 ? tangent[axis] / length : Double.NaN;
    }

    /** Slopes by elimination; the matrix is diagonally dominant. */
    private double[] slopes(int axis, double first, double last) {
        int n = at.length;
        double[] upper = new double[n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            double lower = 0;
            double diagonal = 1;
            double above = 0;
            double b;
            if (i == 0) {
                above = Double.isNaN(first) ? 0.5 : 0;
                b = Double.isNaN(first) ? 1.5 * step(axis, 0) : first;
            } else if (i == n - 1) {
                lower = Double.isNaN(last) ? 0.5 : 0;
                b = Double.isNaN(last) ? 1.5 * step(axis, n - 2) : last;
            } else {
                double h0 = at[i] - at[i - 1];
                double h1 = at[i + 1] - at[i];
                lower = h1;
                diagonal = 2 * (h0 + h1);
                above = h0;
                b = 3 * (h1 * step(axis, i - 1) + h0 * step(axis, i));
            }
            double pivot = diagonal - (i > 0 ? lower * upper[i - 1] : 0);
            upper[i] = above / pivot;
            right[i] = (b - (i > 0 ? lower * right[i - 1] : 0)) / pivot;
        }
        for (int i = n - 2; i >= 0; i--) {
            right[i] -= upper[i] * right[i + 1];
        }
        return right;
    }

    private double step(int axis, int i) {
        return (xy[2 * i + 2 + axis] - xy[2 * i + axis]) / (at[i + 1] - at[i]);
    }

    void flatten(Flattening flattening) {
        for (int i = 0; i + 1 < at.length; i++) {
            int k = i;
            flattening.add(t -> at(k, t), 0, 1);
        }
    }

    /** Cubic Hermite between points i and i + 1. */
    private double[] at(int i, double t) {
        double h = at[i + 1] - at[i];
        double a = (1 + 2 * t) * (1 - t) * (1 - t);
        double b = t * (1 - t) * (1 - t) * h;
        double c = t * t * (3 - 2 * t);
        double d = t * t * (t - 1) * h;
        return new double[] {
            a * xy[2 * i] + b * slopeX[i] + c * xy[2 * i + 2] + d * slopeX[i + 1],
            a * xy[2 * i + 1] + b * slopeY[i] + c * xy[2 * i + 3] + d * slopeY[i + 1]
        };
    }
}
