package org.runbend.export.dxf.read;

/**
 * A rational B-spline of the plane: control points with weights, knots rising, one more than points and degree together.
 * Points by de Boor's algorithm (de Boor 1972) on (wx, wy, w).
 */
final class SplineCurve {
    private final int degree;
    private final double[] knots;
    private final double[] homogeneous;

    /** {@code xy} holds x, y of each control point; weights may be empty. */
    SplineCurve(int degree, double[] knots, double[] weights, double[] xy) {
        this.degree = degree;
        this.knots = knots;
        int n = xy.length / 2;
        homogeneous = new double[3 * n];
        for (int i = 0; i < n; i++) {
            double w = weights.length == 0 ? 1 : weights[i];
            homogeneous[3 * i] = w * xy[2 * i];
            homogeneous[3 * i + 1] = w * xy[2 * i + 1];
            homogeneous[3 * i + 2] = w;
        }
    }

    /** Splits every span between two different knots of its domain. */
    void flatten(Flattening flattening) {
        int n = homogeneous.length / 3;
        for (int span = degree; span < n; span++) {
            if (knots[span + 1] > knots[span]) {
                int k = span;
                flattening.add(t -> at(k, t), knots[span], knots[span + 1]);
            }
        }
    }

    /** Where it begins. */
    double[] start() {
        int span = degree;
        while (span + 1 < homogeneous.length / 3 && knots[span + 1] <= knots[span]) {
            span++;
        }
        return at(span, knots[degree]);
    }

    private double[] at(int span, double t) {
        double[] d = new double[3 * (degree + 1)];
        System.arraycopy(homogeneous, 3 * (span - degree), d, 0, d.length);
        for (int r = 1; r <= degree; r++) {
            for (int j = degree; j >= r; j--) {
                double low = knots[j + span - degree];
                double high = knots[j + 1 + span - r];
                double a = high > low ? (t - low) / (high - low) : 0;
                for (int c = 0; c < 3; c++) {
                    d[3 * j + c] = (1 - a) * d[3 * (j - 1) + c] + a * d[3 * j + c];
                }
            }
        }
        double w = d[3 * degree + 2];
        return new double[] {d[3 * degree] / w, d[3 * degree + 1] / w};
    }
}
