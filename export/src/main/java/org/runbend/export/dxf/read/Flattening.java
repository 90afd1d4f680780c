package org.runbend.export.dxf.read;

import java.util.List;
import org.runbend.export.dxf.DxfVertex;

/** Splits smooth curves into chords, piece by piece, until each lies within the tolerance of its curve. */
final class Flattening {
    /** A piece is halved at least twice, so that one that swings evenly about its chord is not taken for straight. */
    private static final int LEAST_DEPTH = 2;

    private static final int MOST_DEPTH = 12;

    /** Share of the tolerance allowed at the places looked at; the rest is for those between. */
    private static final double SHARE = 0.8;

    private final double tolerance;
    private final List<DxfVertex> out;

    Flattening(double tolerance, List<DxfVertex> out) {
        this.tolerance = SHARE * tolerance;
        this.out = out;
    }

    /** A smooth piece of a curve. */
    interface Piece {
        /** x and y at t. */
        double[] at(double t);
    }

    /** Adds the ends of the chords from t = a to b, without the beginning. */
    void add(Piece piece, double a, double b) {
        add(piece, a, piece.at(a), b, piece.at(b), 0);
    }

    private void add(Piece piece, double a, double[] pa, double b, double[] pb, int depth) {
        double middle = (a + b) / 2;
        double[] pm = piece.at(middle);
        boolean deepEnough = depth >= LEAST_DEPTH
                && isNear(pm, pa, pb)
                && isNear(piece.at((3 * a + b) / 4), pa, pb)
                && isNear(piece.at((a + 3 * b) / 4), pa, pb);
        if (deepEnough || depth == MOST_DEPTH) {
            out.add(new DxfVertex(pb[0], pb[1], 0));
            return;
        }
        add(piece, a, pa, middle, pm, depth + 1);
        add(piece, middle, pm, b, pb, depth + 1);
    }

    /** Whether p lies within the tolerance of the chord from a to b, not only of its line. */
    private boolean isNear(double[] p, double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double length2 = dx * dx + dy * dy;
        double t = length2 > 0 ? ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2 : 0;
        double s = Math.max(0, Math.min(1, t));
        double ex = p[0] - a[0] - s * dx;
        double ey = p[1] - a[1] - s * dy;
        return ex * ex + ey * ey <= tolerance * tolerance;
    }
}
