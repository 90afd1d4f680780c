package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.floor.Distance.Arc;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * What supports and rules for pipe allow, in the lattice's axes: pipe crosses a support straight and square or not at all, no bend
 * touches one, and no bend touches the circle of a {@link PipeRule.NoBend}.
 */
final class SiteRules {
    /** A crossing this far off a right angle is square to a fitter's eye, degrees (common practice). */
    static final double SQUARE = 2;

    /** Touching is not crossing, mm. */
    private static final double TOUCH = 1e-6;

    private final List<Bar> bars;
    private final List<PipeRule.NoBend> noBends;

    /** A support as corners and the unit vector along its middle line. */
    private static final class Bar {
        private final double[] xs;
        private final double[] ys;
        private final double ux;
        private final double uy;
        private final boolean never;

        Bar(List<Point> corners, Point a, Point b, boolean never) {
            this.xs = corners.stream().mapToDouble(Point::x).toArray();
            this.ys = corners.stream().mapToDouble(Point::y).toArray();
            this.ux = (b.x() - a.x()) / a.distance(b);
            this.uy = (b.y() - a.y()) / a.distance(b);
            this.never = never;
        }
    }

    SiteRules(FloorProblem problem, LatticeAxes frame) {
        bars = problem.supports().stream().map(s -> bar(s, frame)).toList();
        noBends = problem.pipeRules().stream()
                .filter(PipeRule.NoBend.class::isInstance)
                .map(PipeRule.NoBend.class::cast)
                .map(v -> new PipeRule.NoBend(v.key(), frame.in(v.at()), v.radius()))
                .toList();
    }

    private static Bar bar(Support support, LatticeAxes frame) {
        return new Bar(
                frame.in(support.region().corners()),
                frame.in(support.from()),
                frame.in(support.to()),
                support.cross() == Support.Crossing.NEVER);
    }

    /** Whether pipe may begin or end at the point: on no support. */
    boolean mayEnd(double x, double y) {
        return bars.stream().noneMatch(bar -> FreeSpace.inside(bar.xs, bar.ys, x, y));
    }

    /** Whether straight pipe may follow the segment. */
    boolean allowsSegment(double ax, double ay, double bx, double by) {
        double length = Math.hypot(bx - ax, by - ay);
        for (Bar bar : bars) {
            double along = Math.abs((bx - ax) * bar.ux + (by - ay) * bar.uy);
            boolean square = along <= Math.sin(Math.toRadians(SQUARE)) * length;
            if ((bar.never || !square) && enters(bar, ax, ay, bx, by)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a bend may follow the arc. */
    boolean allowsArc(Arc arc) {
        for (PipeRule.NoBend v : noBends) {
            if (Distance.pointArc(v.at().x(), v.at().y(), arc) < v.radius() - TOUCH) {
                return false;
            }
        }
        return bars.stream().noneMatch(bar -> enters(bar, arc));
    }

    /** Clips the segment by the four sides of the rectangle (Liang and Barsky 1984); a mere touch is no entry. */
    private static boolean enters(Bar bar, double ax, double ay, double bx, double by) {
        double from = 0;
        double to = 1;
        for (int i = 0, j = 3; i < 4; j = i++) {
            double nx = -(bar.ys[i] - bar.ys[j]);
            double ny = bar.xs[i] - bar.xs[j];
            double size = Math.hypot(nx, ny);
            double start = ((ax - bar.xs[j]) * nx + (ay - bar.ys[j]) * ny) / size - TOUCH;
            double end = ((bx - bar.xs[j]) * nx + (by - bar.ys[j]) * ny) / size - TOUCH;
            if (start <= 0 && end <= 0) {
                return false;
            }
            if (start <= 0) {
                from = Math.max(from, start / (start - end));
            } else if (end <= 0) {
                to = Math.min(to, start / (start - end));
            }
        }
        return from < to || (ax == bx && ay == by);
    }

    private static boolean enters(Bar bar, Arc arc) {
        if (FreeSpace.inside(bar.xs, bar.ys, arc.startX(), arc.startY())) {
            return true;
        }
        for (int i = 0, j = 3; i < 4; j = i++) {
            if (Distance.segmentArc(bar.xs[j], bar.ys[j], bar.xs[i], bar.ys[i], arc) < TOUCH) {
                return true;
            }
        }
        return false;
    }
}
