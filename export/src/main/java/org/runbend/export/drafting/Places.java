package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;

/** Points of the plan as points of the drawing, unchanged: both are mm, x to the right and y up, seen from above. */
final class Places {
    /** Share of the floor's size that title and measures take beside it on a page. */
    private static final double ROOM_FOR_WORDS = 0.22;

    private Places() {}

    /** Drawing mm for a mm of paper when the floor and its words fill an A4 page. */
    static double unit(Extent floor) {
        return floor.grow(ROOM_FOR_WORDS * Math.max(floor.width(), floor.height()))
                .mmPerPaperMm();
    }

    static Point at(org.runbend.optimizer.job.Point p) {
        return new Point(p.x(), p.y());
    }

    static List<Point> all(List<org.runbend.optimizer.job.Point> points) {
        return points.stream().map(Places::at).toList();
    }

    /** Part of the way from a to b. */
    static Point between(Point a, Point b, double share) {
        return new Point(a.x() + share * (b.x() - a.x()), a.y() + share * (b.y() - a.y()));
    }

    /** How far a point is from a line between two. */
    static double away(Point p, Point a, Point b) {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square;
        double share = Math.max(0, Math.min(1, t));
        return p.distance(new Point(a.x() + share * dx, a.y() + share * dy));
    }

    /** Whether a point lies in a ring of points: a ray from it crosses the ring an odd number of times. */
    static boolean isInside(Point p, List<Point> ring) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            if ((a.y() > p.y()) != (b.y() > p.y())
                    && p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y())) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** Whether a ring of points runs anticlockwise. */
    static boolean isAnticlockwise(List<Point> ring) {
        double twice = 0;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice > 0;
    }

    /** The rising numbers nearest to given ones by least squares: neighbours that would fall are pooled at their mean. */
    static double[] rising(double[] own) {
        double[] mean = new double[own.length];
        int[] size = new int[own.length];
        int pools = 0;
        for (double value : own) {
            mean[pools] = value;
            size[pools] = 1;
            pools++;
            while (pools > 1 && mean[pools - 2] > mean[pools - 1]) {
                int both = size[pools - 2] + size[pools - 1];
                mean[pools - 2] = (mean[pools - 2] * size[pools - 2] + mean[pools - 1] * size[pools - 1]) / both;
                size[pools - 2] = both;
                pools--;
            }
        }
        double[] rising = new double[own.length];
        int at = 0;
        for (int p = 0; p < pools; p++) {
            for (int k = 0; k < size[p]; k++) {
                rising[at++] = mean[p];
            }
        }
        return rising;
    }
}
