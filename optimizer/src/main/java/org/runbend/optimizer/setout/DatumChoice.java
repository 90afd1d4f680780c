package org.runbend.optimizer.setout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.tape.TapeMeasuring;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * Chooses the two lines: among the lines of the lattice those that are clear of walls and things over most of the loop, and of
 * such the ones nearest its lower left. Then all runs lie at whole spacings from them.
 */
final class DatumChoice {
    /** What a whole breadth of the loop beyond a line weighs against a line that is clear all along. */
    private static final double BEYOND = 0.35;

    private static final double SAME = 1e-6;
    private static final double FAR = 100_000;
    private static final double LEAST_STEP = 50;
    private static final int SHORT = 3;
    private static final int MIDDLE = 4;
    private static final int LONG = 5;

    private final SetOutProblem problem;
    private final Geometry clear;
    private final List<Point> places = new ArrayList<>();

    DatumChoice(SetOutProblem problem) {
        this.problem = problem;
        Geometry free = FloorShapes.polygon(problem.job().floor().outline());
        for (KeepOut k : problem.job().floor().keepOuts()) {
            free = OverlayNGRobust.overlay(free, FloorShapes.bare(k.bare()), OverlayNG.DIFFERENCE);
        }
        clear = free;
        for (SetOutProblem.Loop loop : problem.loops()) {
            for (Element e : loop.breakdown().elements()) {
                places.add(problem.grid().from(e.from()));
                places.add(problem.grid().from(e.to()));
            }
        }
    }

    Datum choose() {
        Span us = Span.of(places.stream().mapToDouble(Point::x).toArray());
        Span vs = Span.of(places.stream().mapToDouble(Point::y).toArray());
        List<Line> along = lines(lanes(vs, Point::y), v -> new Point[] {new Point(-FAR, v), new Point(FAR, v)}, us);
        List<Line> across = lines(lanes(us, Point::x), u -> new Point[] {new Point(u, -FAR), new Point(u, FAR)}, vs);
        Crossing best = null;
        for (Line base : along) {
            for (Line square : across) {
                Optional<Crossing> c = crossing(base, square, us, vs);
                if (c.isPresent() && (best == null || c.get().worth > best.worth + SAME)) {
                    best = c.get();
                }
            }
        }
        return best == null ? datum(fallBack(us, vs)) : datum(best);
    }

    /** Lattice lines over the loop; of a loop that lies on no lattice those through its ends of runs. */
    private List<Double> lanes(Span span, ToDoubleFunction<Point> coordinate) {
        TreeSet<Double> lanes = new TreeSet<>();
        if (problem.spacing() > 0) {
            double s = problem.spacing();
            for (double at = Math.ceil(span.from / s - SAME) * s; at <= span.to + SAME; at += s) {
                lanes.add(at);
            }
        }
        if (lanes.isEmpty()) {
            places.forEach(p -> lanes.add(Math.rint(coordinate.applyAsDouble(p) * 100) / 100));
        }
        return List.copyOf(lanes);
    }

    private List<Line> lines(List<Double> lanes, DoubleFunction<Point[]> ends, Span over) {
        List<Line> lines = new ArrayList<>();
        for (double lane : lanes) {
            Point[] e = ends.apply(lane);
            Geometry inside = OverlayNGRobust.overlay(
                    clear,
                    FloorShapes.line(
                            problem.grid().onFloor(e[0].x(), e[0].y()),
                            problem.grid().onFloor(e[1].x(), e[1].y())),
                    OverlayNG.INTERSECTION);
            for (int i = 0; i < inside.getNumGeometries(); i++) {
                Coordinate[] way = inside.getGeometryN(i).getCoordinates();
                if (way.length >= 2) {
                    Point a = problem.grid().from(new Point(way[0].x, way[0].y));
                    Point b = problem.grid().from(new Point(way[way.length - 1].x, way[way.length - 1].y));
                    boolean level = e[0].y() == e[1].y();
                    lines.add(new Line(
                            lane, Span.of(level ? new double[] {a.x(), b.x()} : new double[] {a.y(), b.y()}), over));
                }
            }
        }
        return lines;
    }

    private static Optional<Crossing> crossing(Line base, Line square, Span us, Span vs) {
        boolean meet = base.span.holds(square.lane) && square.span.holds(base.lane);
        if (!meet) {
            return Optional.empty();
        }
        double beyond = us.share(square.lane) + vs.share(base.lane);
        double worth = base.clear() + square.clear() - BEYOND * beyond;
        return Optional.of(new Crossing(square.lane, base.lane, base.span, square.span, worth));
    }

    /** No two lines of the lattice cross on the floor: the lower left of the loop, with lines of its own size. */
    private static Crossing fallBack(Span us, Span vs) {
        return new Crossing(us.from, vs.from, us, vs, 0);
    }

    private Datum datum(Crossing c) {
        Frame frame = new Frame(problem.grid().onFloor(c.u, c.v), problem.grid().angle());
        Datum.Reach base = new Datum.Reach(Math.min(0, c.base.from - c.u), Math.max(0, c.base.to - c.u));
        Datum.Reach square = new Datum.Reach(Math.min(0, c.square.from - c.v), Math.max(0, c.square.to - c.v));
        return new Datum(frame, base, square, check(base, square), marks(frame, base, square));
    }

    private static Datum.SquareCheck check(Datum.Reach base, Datum.Reach square) {
        double u = arm(base);
        double v = arm(square);
        double step = step(Math.abs(u), Math.abs(v));
        boolean longBase = Math.abs(u) >= Math.abs(v);
        double along = Math.signum(u) * step * (longBase ? MIDDLE : SHORT);
        double across = Math.signum(v) * step * (longBase ? SHORT : MIDDLE);
        return new Datum.SquareCheck(along, across, step * LONG, Math.sqrt(u * u + v * v));
    }

    /** The longest triangle in whole steps of 50 mm. */
    private static double step(double u, double v) {
        double most = Math.min(Math.max(u, v) / MIDDLE, Math.min(u, v) / SHORT);
        return Math.floor(most / LEAST_STEP + SAME) * LEAST_STEP;
    }

    private static double arm(Datum.Reach reach) {
        return reach.to() >= -reach.from() ? reach.to() : reach.from();
    }

    private List<TapeSheet.Thing> marks(Frame frame, Datum.Reach base, Datum.Reach square) {
        List<TapeMeasuring.Hole> marks = new ArrayList<>();
        marks.add(new TapeMeasuring.Hole("O", frame.origin()));
        if (base.from() < -1) {
            marks.add(new TapeMeasuring.Hole("X1", frame.onFloor(base.from(), 0)));
        }
        if (base.to() > 1) {
            marks.add(new TapeMeasuring.Hole(base.from() < -1 ? "X2" : "X", frame.onFloor(base.to(), 0)));
        }
        if (square.from() < -1) {
            marks.add(new TapeMeasuring.Hole("Y1", frame.onFloor(0, square.from())));
        }
        if (square.to() > 1) {
            marks.add(new TapeMeasuring.Hole(square.from() < -1 ? "Y2" : "Y", frame.onFloor(0, square.to())));
        }
        return new TapeMeasuring().measure(problem.job(), marks).holes();
    }

    private record Crossing(double u, double v, Span base, Span square, double worth) {}

    /** A lattice line's clear part; {@code over} is what the loop takes of that direction. */
    private record Line(double lane, Span span, Span over) {
        /** Share of the loop's breadth beside which it is clear. */
        double clear() {
            double shared = Math.min(span.to, over.to) - Math.max(span.from, over.from);
            return over.to > over.from ? Math.max(0, shared) / (over.to - over.from) : 1;
        }
    }

    private record Span(double from, double to) {
        static Span of(double... values) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (double v : values) {
                least = Math.min(least, v);
                most = Math.max(most, v);
            }
            return new Span(least, most);
        }

        boolean holds(double at) {
            return at >= from - SAME && at <= to + SAME;
        }

        double share(double at) {
            return to > from ? (at - from) / (to - from) : 0;
        }
    }
}
