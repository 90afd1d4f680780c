package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Vertex;

/**
 * A closed line, anticlockwise, mm.
 *
 * @param layer where it was drawn
 * @param path its lines and arcs
 * @param curved whether chords of it stand for a curve that is no arc
 * @param area what it encloses, mm2
 * @param box the box around it
 */
public record Contour(String layer, Path path, boolean curved, double area, Extent box) {
    /** Vertices nearer than this are one, mm. */
    static final double SAME = 0.01;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final double SAGITTA = 0.05;
    private static final int MOST_CHORDS = 20_000;
    /** Share of its box below which the parts of a line that crosses itself may have cancelled each other. */
    private static final double CANCELLED = 0.1;

    /** The contour of vertices, empty if it has no area to speak of. */
    static Optional<Contour> of(String layer, List<Vertex> vertices, boolean curved) {
        List<Vertex> clean = clean(vertices);
        if (clean.size() < 2 || (clean.size() == 2 && clean.stream().allMatch(v -> v.bulge() == 0))) {
            return Optional.empty();
        }
        Contour contour = made(layer, clean, curved);
        return Optional.of(contour.area < 0 ? made(layer, turned(clean), curved) : contour);
    }

    /** A whole circle as two half circles. */
    static Contour circle(String layer, Point centre, double radius) {
        return made(
                layer,
                List.of(new Vertex(centre.x() - radius, centre.y(), 1), new Vertex(centre.x() + radius, centre.y(), 1)),
                false);
    }

    private static Contour made(String layer, List<Vertex> vertices, boolean curved) {
        Path path = new Path(vertices, true);
        return new Contour(layer, path, curved, signedArea(path), path.extent());
    }

    /** A vertex that lies on the next one goes, with the way between them. */
    private static List<Vertex> clean(List<Vertex> vertices) {
        List<Vertex> out = new ArrayList<>();
        for (Vertex v : vertices) {
            if (!out.isEmpty() && out.get(out.size() - 1).point().distance(v.point()) < SAME) {
                out.remove(out.size() - 1);
            }
            out.add(v);
        }
        if (out.size() > 1
                && out.get(out.size() - 1).point().distance(out.get(0).point()) < SAME) {
            out.remove(out.size() - 1);
        }
        return out;
    }

    private static List<Vertex> turned(List<Vertex> vertices) {
        List<Vertex> out = new ArrayList<>();
        int n = vertices.size();
        for (int i = n - 1; i >= 0; i--) {
            Vertex v = vertices.get(i);
            out.add(new Vertex(v.x(), v.y(), -vertices.get((i + n - 1) % n).bulge()));
        }
        return out;
    }

    /** The same with chords within a twentieth of a millimetre; made anew each time, as most are never asked for. */
    Polygon polygon() {
        List<Coordinate> ring = new ArrayList<>();
        List<Shape> parts = path.parts();
        int most = Math.max(2, MOST_CHORDS / parts.size());
        for (int i = 0; i < parts.size(); i++) {
            Point a = path.vertices().get(i).point();
            ring.add(new Coordinate(a.x(), a.y()));
            if (parts.get(i) instanceof Arc arc) {
                chords(arc, most).forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
            }
        }
        if (ring.size() < 3) {
            ring.add(new Coordinate(ring.get(0)));
        }
        ring.add(new Coordinate(ring.get(0)));
        return GEOMETRY.createPolygon(ring.toArray(Coordinate[]::new));
    }

    /** Points between the ends of an arc. */
    private static List<Point> chords(Arc arc, int most) {
        double step = 2 * Math.toDegrees(StrictMath.acos(1 - Math.min(0.5, SAGITTA / arc.radius())));
        int n = (int) Math.min(most, Math.max(2, Math.ceil(Math.abs(arc.sweep()) / step)));
        List<Point> points = new ArrayList<>();
        for (int i = 1; i < n; i++) {
            points.add(arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / n));
        }
        return points;
    }

    /** Half the sum of the cross products of the corners, and r^2 / 2 (w - sin w) for each arc over the angle w. */
    private static double signedArea(Path path) {
        Point o = path.vertices().get(0).point();
        double sum = 0;
        List<Shape> parts = path.parts();
        for (int i = 0; i < parts.size(); i++) {
            Vertex a = path.vertices().get(i);
            Point b = path.end(i);
            sum += (a.x() - o.x()) * (b.y() - o.y()) - (b.x() - o.x()) * (a.y() - o.y());
            if (parts.get(i) instanceof Arc arc) {
                double w = Math.toRadians(arc.sweep());
                sum += arc.radius() * arc.radius() * (w - StrictMath.sin(w));
            }
        }
        return sum / 2;
    }

    /** Area of it, mm2, or of the box around it if it crosses itself so that little of its area is left: how much it matters. */
    double weight() {
        double around = box.width() * box.height();
        return area >= CANCELLED * around || crossing().isEmpty() ? area : around;
    }

    /** Whether the box of this one holds that of the other. */
    boolean boxCovers(Contour other) {
        return box.minX() <= other.box.minX()
                && box.minY() <= other.box.minY()
                && box.maxX() >= other.box.maxX()
                && box.maxY() >= other.box.maxY();
    }

    boolean hasVertexAt(Point p) {
        boolean near = p.x() > box.minX() - SAME
                && p.x() < box.maxX() + SAME
                && p.y() > box.minY() - SAME
                && p.y() < box.maxY() + SAME;
        return near && path.vertices().stream().anyMatch(v -> v.point().distance(p) < SAME);
    }

    boolean boxMeets(Contour other) {
        return box.minX() <= other.box.maxX()
                && box.minY() <= other.box.maxY()
                && box.maxX() >= other.box.minX()
                && box.maxY() >= other.box.minY();
    }

    /** A place where it crosses or touches itself, if there is one. */
    Optional<Point> crossing() {
        TopologyValidationError error = new IsValidOp(polygon()).getValidationError();
        return Optional.ofNullable(error).map(e -> new Point(e.getCoordinate().x, e.getCoordinate().y));
    }

    /** The circle that it is, if it is one. */
    Optional<Arc> round() {
        List<Shape> parts = path.parts();
        if (!parts.stream().allMatch(Arc.class::isInstance)) {
            return Optional.empty();
        }
        Arc first = (Arc) parts.get(0);
        boolean one = parts.stream()
                .map(Arc.class::cast)
                .allMatch(a -> a.centre().distance(first.centre()) < SAME
                        && Math.abs(a.radius() - first.radius()) < SAME
                        && Math.signum(a.sweep()) == Math.signum(first.sweep()));
        return one ? Optional.of(first) : Optional.empty();
    }

    /** Whether both are the same line, drawn twice. */
    boolean isLike(Contour other) {
        double off = Math.max(
                Math.max(Math.abs(box.minX() - other.box.minX()), Math.abs(box.maxX() - other.box.maxX())),
                Math.max(Math.abs(box.minY() - other.box.minY()), Math.abs(box.maxY() - other.box.maxY())));
        return off < 0.1 && Math.abs(area() - other.area) <= 1e-4 * area + 0.1;
    }
}
