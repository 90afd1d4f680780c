package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.runbend.optimizer.boards.BoardsPlan.Breach;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsPlan.Wish;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * What stands against a joint along a line x = c or y = c, stretch by stretch: where there may be none, and where one breaks
 * a wish.
 */
final class JointLine {
    /** A groove may lie in a joint for this many of its widths, as it does 30 degrees off square; beyond, it lies lengthwise. */
    private static final double LENGTHWISE = 1.15;

    /** From a bend's tangent point, as asked. */
    private static final double FROM_BEND = 50;

    /** Board between a joint and the long side of a groove: own choice, twice what must stay between grooves. */
    private static final double BESIDE = 20;

    /** Board between a joint and an opening: own choice. */
    static final double FROM_OPENING = 25;

    /** Openings from this size on may have joints into their middle, as boards may be too small to lie round: own choice. */
    private static final double LARGE = 250;

    /** Between joints of two layers: common practice in floors of panels. */
    private static final double STAGGER = 100;

    private static final double SQUARE = 0.03;

    private final boolean upright;
    private final double at;
    private final HeldJoints held;
    private final double leastPart;
    private final List<Stretch> never = new ArrayList<>();
    private final List<Stretch> breaches = new ArrayList<>();
    private final List<Stretch> supported = new ArrayList<>();
    private boolean wantsSupport;

    /** A stretch of the line. */
    private record Stretch(double from, double to, Wish wish) {
        boolean meets(double a, double b) {
            return to > a + 1e-6 && from < b - 1e-6;
        }
    }

    JointLine(
            BoardsProblem problem,
            Layer layer,
            List<Joint> below,
            HeldJoints held,
            boolean upright,
            double at,
            Geometry grooves) {
        this.held = held;
        leastPart = problem.making().leastPart();
        this.upright = upright;
        this.at = at;
        problem.cutouts().stream()
                .filter(c -> c.through().contains(layer.role()))
                .forEach(this::opening);
        if (layer.role() == Role.ROUTED) {
            crossings(problem, grooves);
            problem.loops().forEach(l -> along(problem, l));
            ends(problem);
        }
        if (!problem.supports().isEmpty()) {
            wantsSupport = true;
            problem.supports().forEach(this::support);
        }
        below.forEach(this::over);
    }

    double at() {
        return at;
    }

    /** Whether there may be a joint from a to b. */
    boolean isAllowed(double a, double b) {
        // walls may have moved a little: what is beyond the ends of a joint is no part of its own
        return never.stream().noneMatch(s -> s.meets(a, b)) && held.allow(upright, at, a, b, leastPart / 2);
    }

    /** The wishes that a joint from a to b breaks. */
    List<Breach> breaches(double a, double b) {
        List<Breach> all = new ArrayList<>();
        for (Stretch s : breaches) {
            if (s.meets(a, b)) {
                all.add(new Breach(s.wish(), point((Math.max(a, s.from()) + Math.min(b, s.to())) / 2)));
            }
        }
        if (wantsSupport) {
            double carried = supported.stream()
                    .mapToDouble(s -> Math.max(0, Math.min(b, s.to()) - Math.max(a, s.from())))
                    .sum();
            if (carried < 0.9 * (b - a)) {
                all.add(new Breach(Wish.SUPPORTED, point((a + b) / 2)));
            }
        }
        return all;
    }

    Point point(double along) {
        return upright ? new Point(at, along) : new Point(along, at);
    }

    private double across(Point p) {
        return upright ? p.x() : p.y();
    }

    private double along(Point p) {
        return upright ? p.y() : p.x();
    }

    private void opening(Cutout c) {
        Envelope box = Region.open(c).getEnvelopeInternal();
        double low = upright ? box.getMinX() : box.getMinY();
        double high = upright ? box.getMaxX() : box.getMaxY();
        double from = upright ? box.getMinY() : box.getMinX();
        double to = upright ? box.getMaxY() : box.getMaxX();
        boolean near = at > low - FROM_OPENING && at < high + FROM_OPENING;
        boolean through = at > low + (high - low) / 5 && at < high - (high - low) / 5;
        boolean whole = c.filling() == BoardsProblem.Filling.OPEN && high - low < LARGE;
        if (near && (whole || !through)) {
            never.add(new Stretch(from - FROM_OPENING, to + FROM_OPENING, null));
        }
    }

    private void crossings(BoardsProblem problem, Geometry grooves) {
        Envelope all = grooves.getEnvelopeInternal();
        double from = (upright ? all.getMinY() : all.getMinX()) - 1;
        double to = (upright ? all.getMaxY() : all.getMaxX()) + 1;
        Point a = point(from);
        Point b = point(to);
        Geometry cut = grooves.intersection(Region.FACTORY.createLineString(
                new Coordinate[] {new Coordinate(a.x(), a.y()), new Coordinate(b.x(), b.y())}));
        for (int i = 0; i < cut.getNumGeometries(); i++) {
            Envelope e = cut.getGeometryN(i).getEnvelopeInternal();
            if (cut.getGeometryN(i).getLength() == 0) {
                continue;
            }
            double low = upright ? e.getMinY() : e.getMinX();
            double high = upright ? e.getMaxY() : e.getMaxX();
            if (high - low > LENGTHWISE * problem.making().bendGroove()) {
                never.add(new Stretch(low, high, null));
            } else if (!square(problem, point((low + high) / 2))) {
                breaches.add(new Stretch(low, high, Wish.SQUARE));
            }
        }
    }

    /** Whether the pipe at a place is a run square to the line, and no bend begins within 50 mm. */
    private boolean square(BoardsProblem problem, Point p) {
        for (Breakdown loop : problem.loops()) {
            List<Element> pipe = loop.pipe();
            for (int i = 0; i < pipe.size(); i++) {
                if (pipe.get(i) instanceof Element.Run run && crosses(run, p)) {
                    boolean clear = (i == 0 || p.distance(run.from()) >= FROM_BEND)
                            && (i == pipe.size() - 1 || p.distance(run.to()) >= FROM_BEND);
                    return clear && slope(run) < SQUARE;
                }
            }
        }
        return false;
    }

    /** How far a run leans from square, as the sine of the angle. */
    private double slope(Element.Run run) {
        return Math.abs(along(run.to()) - along(run.from())) / run.length();
    }

    private static boolean crosses(Element.Run run, Point p) {
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        double dx = p.x() - run.from().x();
        double dy = p.y() - run.from().y();
        double t = dx * ux + dy * uy;
        return t > -1e-6 && t < run.length() + 1e-6 && Math.abs(dx * uy - dy * ux) < 1;
    }

    private void along(BoardsProblem problem, Breakdown loop) {
        double half = problem.making().bendGroove() / 2;
        for (Element e : loop.pipe()) {
            if (e instanceof Element.Run run && slope(run) > 1 - SQUARE) {
                double off = Math.max(Math.abs(across(run.from()) - at), Math.abs(across(run.to()) - at));
                double from = Math.min(along(run.from()), along(run.to()));
                double to = Math.max(along(run.from()), along(run.to()));
                if (off < half + problem.making().jointGap() / 2 + 1) {
                    never.add(new Stretch(from, to, null));
                } else if (off < half + BESIDE) {
                    breaches.add(new Stretch(from, to, Wish.BESIDE));
                }
            }
        }
    }

    /** No joint through the pockets at the ends of the pipe. */
    private void ends(BoardsProblem problem) {
        double half = Math.max(problem.making().pad(), problem.making().bendGroove()) / 2 + 10;
        for (Breakdown loop : problem.loops()) {
            List<Element> pipe = loop.pipe();
            for (Point p : List.of(pipe.get(0).from(), pipe.get(pipe.size() - 1).to())) {
                if (Math.abs(across(p) - at) < half) {
                    never.add(new Stretch(along(p) - half, along(p) + half, null));
                }
            }
        }
        for (List<Point> ramp : problem.ramps()) {
            double low = ramp.stream().mapToDouble(this::across).min().orElse(at) - 5;
            double high = ramp.stream().mapToDouble(this::across).max().orElse(at) + 5;
            if (at > low && at < high) {
                never.add(new Stretch(
                        ramp.stream().mapToDouble(this::along).min().orElse(0) - 5,
                        ramp.stream().mapToDouble(this::along).max().orElse(0) + 5,
                        null));
            }
        }
    }

    private void support(Support s) {
        double off = Math.max(Math.abs(across(s.from()) - at), Math.abs(across(s.to()) - at));
        if (off < s.width() / 2 - 5) {
            supported.add(new Stretch(
                    Math.min(along(s.from()), along(s.to())), Math.max(along(s.from()), along(s.to())), null));
        }
    }

    private void over(Joint j) {
        boolean parallel = Math.abs(across(j.from()) - across(j.to())) < 1e-6;
        if (parallel && Math.abs(across(j.from()) - at) < STAGGER) {
            breaches.add(new Stretch(
                    Math.min(along(j.from()), along(j.to())),
                    Math.max(along(j.from()), along(j.to())),
                    Wish.STAGGERED));
        }
    }
}
