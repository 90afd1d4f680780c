package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.dxf.DxfVertex;

/**
 * Points c + u cos t + v sin t of the plane, t from {@code start} by {@code sweep} (radians, over 0, at most a full
 * turn): a circle, an ellipse or a part of one.
 */
record Conic(double x, double y, double ux, double uy, double vx, double vy, double start, double sweep) {
    /** Relative difference below which two half axes are one radius. */
    private static final double ROUND = 1e-9;

    private static final double WHOLE = 2 * Math.PI - 1e-9;

    /** Whether u and v are of equal length and at right angles. */
    static boolean isRound(double ux, double uy, double vx, double vy) {
        double u = ux * ux + uy * uy;
        double v = vx * vx + vy * vy;
        double most = Math.max(u, v);
        return Math.abs(u - v) <= 2 * ROUND * most && Math.abs(ux * vx + uy * vy) <= ROUND * most;
    }

    boolean isRound() {
        return isRound(ux, uy, vx, vy);
    }

    boolean isWhole() {
        return sweep >= WHOLE;
    }

    /** Whether nothing but a line is to be seen of it. */
    boolean isFlat() {
        double long2 = Math.max(ux * ux + uy * uy, vx * vx + vy * vy);
        return Math.abs(cross()) <= 1e-9 * long2;
    }

    private double cross() {
        return ux * vy - uy * vx;
    }

    /** The arc or circle, if it is round. */
    Optional<DxfEntity> round(String layer) {
        if (!isRound()) {
            return Optional.empty();
        }
        double radius = Math.sqrt(ux * ux + uy * uy);
        if (isWhole()) {
            return Optional.of(new DxfEntity.Circle(layer, x, y, radius));
        }
        double base = StrictMath.atan2(uy, ux);
        double from = cross() > 0 ? base + start : base - start - sweep;
        return Optional.of(new DxfEntity.Arc(layer, x, y, radius, Math.toDegrees(from), Math.toDegrees(sweep)));
    }

    /**
     * Chords within {@code tolerance}: an ellipse is a circle stretched by its longer half axis at most, and the sagitta of
     * a chord over the angle w of a unit circle is 1 - cos(w / 2). The first vertex is repeated at the end only if it is
     * not whole.
     */
    List<DxfVertex> chords(double tolerance) {
        double half = longerHalfAxis();
        double w = 2 * StrictMath.acos(1 - Math.min(0.5, tolerance / half));
        int n = (int) Math.max(isWhole() ? 8 : 1, Math.ceil(sweep / w));
        List<DxfVertex> vertices = new ArrayList<>(n + 1);
        for (int i = 0; i < (isWhole() ? n : n + 1); i++) {
            double t = start + sweep * i / n;
            double c = StrictMath.cos(t);
            double s = StrictMath.sin(t);
            vertices.add(new DxfVertex(x + ux * c + vx * s, y + uy * c + vy * s, 0));
        }
        return vertices;
    }

    /** Half of the longer axis: the larger singular value of the matrix (u v). */
    double longerHalfAxis() {
        double a = ux * ux + uy * uy;
        double b = vx * vx + vy * vy;
        double c = ux * vx + uy * vy;
        return Math.sqrt((a + b) / 2 + Math.sqrt((a - b) * (a - b) / 4 + c * c));
    }
}
