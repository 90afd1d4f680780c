package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * Rounds the corners of a path and breaks it into runs and bends.
 *
 * <p>A corner that turns by t takes r tan(t / 2) of both its legs. What is left of a leg is a run; where nothing is left,
 * bends meet, and those of equal hand with one centre are one bend.
 */
public final class Filleting {
    /** Lengths under this are nothing, mm: over the noise of doubles, under what a tape can read. */
    private static final double NOTHING = 1e-6;
    /** A straight this short between two drawn bends is rounding of the drawing, mm. */
    private static final double CRUMB = 0.02;

    /**
     * Breaks down the path through the given points.
     *
     * @param path points in order of flow, mm; points on a straight line are passed over
     * @param radius of every bend, mm
     * @throws IllegalArgumentException if a leg is too short for the bends at its ends
     */
    public Breakdown breakDown(List<Point> path, double radius) {
        List<Point> corners = corners(path);
        return breakDown(corners, Collections.nCopies(corners.size() - 2, radius));
    }

    /**
     * Breaks down a path as somebody drew it: each corner at the radius wanted, or at the largest that its legs leave.
     *
     * @param path points in order of flow, mm
     * @param wanted radius, mm
     */
    public Breakdown breakDownDrawn(List<Point> path, double wanted) {
        List<Point> corners = corners(path);
        List<Double> radii = CornerRadii.of(corners, wanted);
        List<Element> elements = new ArrayList<>();
        Point at = corners.get(0);
        for (int i = 1; i < corners.size() - 1; i++) {
            Element.Bend bend = bend(corners.get(i - 1), corners.get(i), corners.get(i + 1), radii.get(i - 1));
            if (elements.isEmpty() || at.distance(bend.from()) > CRUMB) {
                addRun(elements, at, bend.from(), corners.get(i));
                at = addBend(elements, bend);
            } else {
                at = join(elements, bend);
            }
        }
        addRun(elements, at, corners.get(corners.size() - 1), corners.get(corners.size() - 1));
        return new Breakdown(elements);
    }

    /** Adds a bend that begins a crumb from where the one before ends: of equal hand they are one bend. */
    private static Point join(List<Element> elements, Element.Bend bend) {
        Element.Bend before = (Element.Bend) elements.get(elements.size() - 1);
        if (before.turn() * bend.turn() < 0) {
            elements.add(new Element.Bend(before.to(), bend.to(), bend.centre(), bend.radius(), bend.turn()));
        } else {
            Point centre = new Point(
                    (before.centre().x() + bend.centre().x()) / 2,
                    (before.centre().y() + bend.centre().y()) / 2);
            double radius = (before.from().distance(centre) + bend.to().distance(centre)) / 2;
            elements.set(
                    elements.size() - 1,
                    new Element.Bend(before.from(), bend.to(), centre, radius, clean(before.turn() + bend.turn())));
        }
        return bend.to();
    }

    private static Breakdown breakDown(List<Point> corners, List<Double> radii) {
        List<Element> elements = new ArrayList<>();
        Point at = corners.get(0);
        for (int i = 1; i < corners.size() - 1; i++) {
            if (isKeyhole(corners, i, radii)) {
                at = addKeyhole(elements, at, corners, i, radii.get(i - 1));
                i++;
                continue;
            }
            Element.Bend bend = bend(corners.get(i - 1), corners.get(i), corners.get(i + 1), radii.get(i - 1));
            addRun(elements, at, bend.from(), corners.get(i));
            at = addBend(elements, bend);
        }
        addRun(elements, at, corners.get(corners.size() - 1), corners.get(corners.size() - 1));
        return new Breakdown(elements);
    }

    /** Whether corner i and the next turn back too close for two quarters of their radius. */
    private static boolean isKeyhole(List<Point> corners, int i, List<Double> radii) {
        if (i + 2 >= corners.size()) {
            return false;
        }
        double turn = turn(corners.get(i - 1), corners.get(i), corners.get(i + 1));
        double next = turn(corners.get(i), corners.get(i + 1), corners.get(i + 2));
        boolean back = Math.abs(Math.abs(turn) - Math.PI / 2) < 1e-6 && Math.abs(next - turn) < 1e-6;
        return back && corners.get(i).distance(corners.get(i + 1)) < radii.get(i - 1) + radii.get(i) - NOTHING;
    }

    private static Point addKeyhole(List<Element> elements, Point at, List<Point> corners, int i, double radius) {
        Point corner = corners.get(i);
        double leg = corner.distance(corners.get(i - 1));
        Point inward = new Point(
                (corners.get(i - 1).x() - corner.x()) / leg, (corners.get(i - 1).y() - corner.y()) / leg);
        List<Element.Bend> arcs = new Keyhole(corner, corners.get(i + 1), inward, radius).arcs();
        addRun(elements, at, arcs.get(0).from(), corner);
        elements.addAll(arcs);
        return arcs.get(2).to();
    }

    private static List<Point> corners(List<Point> path) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            boolean end = i == 0 || i == path.size() - 1;
            if (end || Math.abs(turn(path.get(i - 1), path.get(i), path.get(i + 1))) > 1e-9) {
                corners.add(path.get(i));
            }
        }
        return corners;
    }

    /** Signed turn at b, radians, anticlockwise positive. */
    static double turn(Point a, Point b, Point c) {
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double vx = c.x() - b.x();
        double vy = c.y() - b.y();
        return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    }

    private static Element.Bend bend(Point a, Point b, Point c, double radius) {
        double turn = turn(a, b, c);
        double take = radius * Math.tan(Math.abs(turn) / 2);
        Point from = toward(b, a, take);
        Point to = toward(b, c, take);
        double ux = (b.x() - a.x()) / a.distance(b);
        double uy = (b.y() - a.y()) / a.distance(b);
        double side = Math.signum(turn) * radius;
        Point centre = new Point(from.x() - side * uy, from.y() + side * ux);
        return new Element.Bend(from, to, centre, radius, clean(Math.toDegrees(turn)));
    }

    /** Right angles of a lattice come out as whole degrees. */
    private static double clean(double degrees) {
        double whole = Math.rint(degrees);
        return Math.abs(degrees - whole) < 1e-9 ? whole : degrees;
    }

    private static Point toward(Point from, Point to, double distance) {
        double t = distance / from.distance(to);
        return new Point(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()));
    }

    private static void addRun(List<Element> elements, Point from, Point to, Point corner) {
        double length = from.distance(to);
        if (length <= NOTHING) {
            return;
        }
        if (from.distance(corner) < to.distance(corner)) {
            throw new IllegalArgumentException("the leg that ends at (" + corner.x() + ", " + corner.y()
                    + ") is too short for the bends at its ends");
        }
        elements.add(new Element.Run(from, to));
    }

    private static Point addBend(List<Element> elements, Element.Bend bend) {
        int last = elements.size() - 1;
        if (last >= 0
                && elements.get(last) instanceof Element.Bend before
                && before.turn() * bend.turn() > 0
                && before.centre().distance(bend.centre()) < 0.001) {
            elements.set(
                    last,
                    new Element.Bend(
                            before.from(), bend.to(), before.centre(), bend.radius(), before.turn() + bend.turn()));
        } else {
            Point from = last >= 0 && elements.get(last).to().distance(bend.from()) <= NOTHING
                    ? elements.get(last).to()
                    : bend.from();
            elements.add(new Element.Bend(from, bend.to(), bend.centre(), bend.radius(), bend.turn()));
        }
        return bend.to();
    }
}
