package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Vertex;

/** Makes an outline fit for a job file: no corner on a straight side, no arc or number of corners it cannot hold. */
final class Tidying {
    /** What the job file takes: radii of arcs, mm; corners with the chords of arcs, which lie within half a millimetre. */
    private static final double LEAST_RADIUS = 5.01;

    private static final double MOST_RADIUS = 99_000;
    private static final int MOST_CORNERS = 480;
    private static final double SAGITTA = 0.499;

    private static final double STRAIGHT = 0.002;
    private static final double[] COARSER = {0.1, 0.25, 0.5};

    private final List<String> guesses;

    Tidying(List<String> guesses) {
        this.guesses = guesses;
    }

    Contour tidied(Contour contour) {
        List<Vertex> vertices = withoutCollinear(withoutOddArcs(contour), STRAIGHT);
        int corners = corners(vertices);
        for (int i = 0; i < COARSER.length && corners(vertices) > MOST_CORNERS; i++) {
            vertices = withoutCollinear(vertices, COARSER[i]);
        }
        if (corners(vertices) > MOST_CORNERS) {
            throw new NoOutline(
                    "the outline has " + corners(vertices) + " corners with the chords of its arcs, at most "
                            + MOST_CORNERS + " are possible; draw it simpler");
        }
        if (corners(vertices) < corners && corners > MOST_CORNERS) {
            guesses.add("of " + corners + " corners " + corners(vertices) + " were kept, within 0.5 mm of the others");
        }
        return Contour.of(contour.layer(), vertices, contour.curved()).orElse(contour);
    }

    private List<Vertex> withoutOddArcs(Contour contour) {
        List<Vertex> out = new ArrayList<>();
        List<Shape> parts = contour.path().parts();
        int small = 0;
        for (int i = 0; i < parts.size(); i++) {
            Vertex v = contour.path().vertices().get(i);
            boolean odd = parts.get(i) instanceof Arc a && (a.radius() < LEAST_RADIUS || a.radius() > MOST_RADIUS);
            small += odd && ((Arc) parts.get(i)).radius() < LEAST_RADIUS ? 1 : 0;
            out.add(odd ? new Vertex(v.x(), v.y(), 0) : v);
        }
        if (small > 0) {
            guesses.add(small + " arcs with a radius of 5 mm or less became straight");
        }
        return out;
    }

    /** Drops corners between straight sides that lie within a tolerance of the side that takes their place. */
    private static List<Vertex> withoutCollinear(List<Vertex> vertices, double tolerance) {
        List<Vertex> out = new ArrayList<>();
        int n = vertices.size();
        List<Vertex> dropped = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Vertex v = vertices.get(i);
            Vertex next = vertices.get((i + 1) % n);
            boolean between = i > 0 && v.bulge() == 0 && vertices.get(i - 1).bulge() == 0 && n - dropped.size() > 3;
            dropped.add(v);
            if (between && near(out.get(out.size() - 1), next, dropped, tolerance)) {
                continue;
            }
            dropped.clear();
            out.add(v);
        }
        return out.size() > 2 || hasArc(out) ? out : vertices;
    }

    private static boolean hasArc(List<Vertex> vertices) {
        return vertices.size() > 1 && vertices.stream().anyMatch(v -> v.bulge() != 0);
    }

    private static boolean near(Vertex a, Vertex b, List<Vertex> between, double tolerance) {
        LineSegment side = new LineSegment(a.x(), a.y(), b.x(), b.y());
        return between.stream().allMatch(v -> side.distance(new Coordinate(v.x(), v.y())) <= tolerance);
    }

    private static int corners(List<Vertex> vertices) {
        int n = 0;
        for (Shape part : new Path(vertices, true).parts()) {
            n += part instanceof Arc a ? chords(a) : 1;
        }
        return n;
    }

    private static int chords(Arc a) {
        double step = 2 * StrictMath.acos(1 - Math.min(0.5, SAGITTA / a.radius()));
        return (int) Math.ceil(Math.toRadians(Math.abs(a.sweep())) / step);
    }

    /** The middle of an arc from a to b: its sagitta is bulge x chord / 2, to the right of the chord. */
    static Point middle(Vertex a, Point b) {
        double x = (a.x() + b.x()) / 2 + (b.y() - a.y()) * a.bulge() / 2;
        double y = (a.y() + b.y()) / 2 - (b.x() - a.x()) * a.bulge() / 2;
        return new Point(x, y);
    }
}
