package org.runbend.optimizer.setout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;

/**
 * How far each run may move to the left and to the right before its groove or its plates touch the wall, a thing, another groove
 * or another plate. What lies in plates with it moves along, and so do the bends at the ends of what moves.
 */
final class RunRoom {
    /** An arc goes as chords; those of 7.5 degrees at 75 mm keep 0.2 mm to it. */
    private static final double CHORD = 7.5;

    private static final double SAME = 1e-9;

    private final SetOutProblem problem;
    private final double groove;
    private final List<Edge> fixed = new ArrayList<>();

    RunRoom(SetOutProblem problem) {
        this.problem = problem;
        groove = problem.job().groove().half();
        List<Point> outline = problem.job().floor().outline();
        ring(outline, "wall");
        for (KeepOut k : problem.job().floor().keepOuts()) {
            List<Point> rim = new ArrayList<>();
            for (Coordinate c : FloorShapes.bare(k.bare()).getCoordinates()) {
                rim.add(new Point(c.x, c.y));
            }
            ring(rim, k.name());
        }
    }

    private void ring(List<Point> corners, String what) {
        for (int i = 0; i < corners.size(); i++) {
            fixed.add(new Edge(corners.get(i), corners.get((i + 1) % corners.size()), 0, what));
        }
    }

    SetOut.Room left(int loop, int element) {
        return room(loop, element, 1);
    }

    SetOut.Room right(int loop, int element) {
        return room(loop, element, -1);
    }

    private SetOut.Room room(int loop, int element, int side) {
        Element.Run run =
                (Element.Run) problem.loops().get(loop).breakdown().elements().get(element);
        Frame along = new Frame(
                run.from(),
                Math.toDegrees(Math.atan2(
                        run.to().y() - run.from().y(), run.to().x() - run.from().x())));
        Set<SetOutProblem.RunOf> moved = moved(new SetOutProblem.RunOf(loop, element));
        List<Strip> strips = new ArrayList<>();
        for (SetOutProblem.RunOf m : moved) {
            Element e = problem.loops().get(m.loop()).breakdown().elements().get(m.element());
            strips.add(Strip.around(along, List.of(e.from(), e.to())).grown(groove));
        }
        problem.plates().stream()
                .filter(p -> p.runs().stream().anyMatch(moved::contains))
                .forEach(p -> strips.add(Strip.around(along, p.corners())));
        List<Edge> edges = new ArrayList<>(fixed);
        others(edges, moved);
        SetOut.Room best = new SetOut.Room(Double.POSITIVE_INFINITY, "");
        for (Edge edge : edges) {
            for (Strip strip : strips) {
                double way = way(along, strip, edge, side);
                if (way < best.distance() - SAME) {
                    best = new SetOut.Room(way, edge.what);
                }
            }
        }
        return best;
    }

    /** A run and all that lie in plates with it, and with those. */
    private Set<SetOutProblem.RunOf> moved(SetOutProblem.RunOf run) {
        Set<SetOutProblem.RunOf> moved = new LinkedHashSet<>(Set.of(run));
        boolean more = true;
        while (more) {
            more = false;
            for (SetOutProblem.Plate p : problem.plates()) {
                more |= p.runs().stream().anyMatch(moved::contains) && moved.addAll(p.runs());
            }
        }
        return moved;
    }

    /** Grooves and plates of all but what moves and the bends at its ends. */
    private void others(List<Edge> edges, Set<SetOutProblem.RunOf> moved) {
        for (int l = 0; l < problem.loops().size(); l++) {
            Breakdown b = problem.loops().get(l).breakdown();
            int run = 0;
            int bend = 0;
            for (int e = 0; e < b.elements().size(); e++) {
                Element other = b.elements().get(e);
                run += other instanceof Element.Run ? 1 : 0;
                bend += other instanceof Element.Bend ? 1 : 0;
                if (moved.contains(new SetOutProblem.RunOf(l, e - 1))
                        || moved.contains(new SetOutProblem.RunOf(l, e))
                        || moved.contains(new SetOutProblem.RunOf(l, e + 1))) {
                    continue;
                }
                String name = problem.loops().get(l).name();
                String what = other instanceof Element.Run ? "run " + name + run : "bend " + name + "b" + bend;
                Point before = other.from();
                for (Point p : other.onwards(CHORD)) {
                    edges.add(new Edge(before, p, groove, what));
                    before = p;
                }
            }
        }
        for (SetOutProblem.Plate p : problem.plates()) {
            if (p.runs().stream().noneMatch(moved::contains)) {
                for (int i = 0; i < p.corners().size(); i++) {
                    edges.add(new Edge(
                            p.corners().get(i),
                            p.corners().get((i + 1) % p.corners().size()),
                            0,
                            "plate in run " + nameOf(p.runs().get(0))));
                }
            }
        }
    }

    private String nameOf(SetOutProblem.RunOf run) {
        SetOutProblem.Loop loop = problem.loops().get(run.loop());
        return loop.name()
                + loop.breakdown().elements().subList(0, run.element() + 1).stream()
                        .filter(Element.Run.class::isInstance)
                        .count();
    }

    /** How far a strip may go to one side until it touches an edge, mm; infinite if it never does. */
    private static double way(Frame along, Strip strip, Edge edge, int side) {
        Point a = along.from(edge.a);
        Point b = along.from(edge.b);
        double low = strip.from - edge.half;
        double high = strip.to + edge.half;
        if (Math.max(a.x(), b.x()) <= low + SAME || Math.min(a.x(), b.x()) >= high - SAME) {
            return Double.POSITIVE_INFINITY;
        }
        double face = side > 0 ? strip.top : -strip.bottom;
        double atLow = side * at(a, b, low);
        double atHigh = side * at(a, b, high);
        double near = Math.min(atLow, atHigh);
        double far = Math.max(atLow, atHigh);
        boolean behind = far <= side * (strip.top + strip.bottom) / 2;
        return behind ? Double.POSITIVE_INFINITY : Math.max(0, near - edge.half - face);
    }

    /** The nearest height of an edge within the strip's ends: at the end of the edge or where it enters the strip. */
    private static double at(Point a, Point b, double x) {
        if (Math.abs(b.x() - a.x()) < SAME) {
            return a.y();
        }
        double t = Math.max(0, Math.min(1, (x - a.x()) / (b.x() - a.x())));
        return a.y() + t * (b.y() - a.y());
    }

    /** A line that nothing may touch, half as wide as told. */
    private record Edge(Point a, Point b, double half, String what) {}

    /** What moves: a rectangle along the run. */
    private record Strip(double from, double to, double bottom, double top) {
        Strip grown(double half) {
            return new Strip(from, to, bottom - half, top + half);
        }

        static Strip around(Frame along, List<Point> corners) {
            double from = Double.POSITIVE_INFINITY;
            double to = Double.NEGATIVE_INFINITY;
            double bottom = Double.POSITIVE_INFINITY;
            double top = Double.NEGATIVE_INFINITY;
            for (Point c : corners) {
                Point p = along.from(c);
                from = Math.min(from, p.x());
                to = Math.max(to, p.x());
                bottom = Math.min(bottom, p.y());
                top = Math.max(top, p.y());
            }
            return new Strip(from, to, bottom, top);
        }
    }
}
