package org.runbend.export.outline;

import java.util.Optional;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * A corner where two straight lines were drawn a little too long or too short to meet.
 *
 * @param at where they cross, or would cross
 * @param off how far the farther of their ends lies from there, mm
 */
record Corner(Point at, double off) {
    /** Lines that differ by less in direction run on, and meet at no corner; sine of 5 degrees. */
    private static final double LEAST_SINE = 0.087;

    /** The corner of two pieces that end there, each within a distance of it; empty if there is none. */
    static Optional<Corner> of(Piece a, Piece b, double within) {
        int m = a.vertices().size();
        int n = b.vertices().size();
        boolean straight =
                a.vertices().get(m - 2).bulge() == 0 && b.vertices().get(n - 2).bulge() == 0;
        if (!straight) {
            return Optional.empty();
        }
        return crossing(a.vertices().get(m - 2), a.end(), b.vertices().get(n - 2), b.end())
                .map(p -> new Corner(p, Math.max(p.distance(a.end()), p.distance(b.end()))))
                .filter(c -> c.off <= within)
                .filter(c -> leaves(c.at, a, within) && leaves(c.at, b, within));
    }

    /** What is left of the last side of a piece must be longer than what is taken or added. */
    private static boolean leaves(Point at, Piece piece, double within) {
        return piece.vertices().get(piece.vertices().size() - 2).point().distance(at) > 2 * within;
    }

    private static Optional<Point> crossing(Vertex a, Point b, Vertex c, Point d) {
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double vx = d.x() - c.x();
        double vy = d.y() - c.y();
        double cross = ux * vy - uy * vx;
        double size = Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
        if (Math.abs(cross) < LEAST_SINE * size || size == 0) {
            return Optional.empty();
        }
        double t = ((c.x() - b.x()) * vy - (c.y() - b.y()) * vx) / cross;
        return Optional.of(new Point(b.x() + t * ux, b.y() + t * uy));
    }
}
