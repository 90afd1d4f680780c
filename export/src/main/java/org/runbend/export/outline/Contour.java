package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.runbend.export.drawing.Arc;
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
 * @param polygon the same with chords within a twentieth of a millimetre
 */
public record Contour(String layer, Path path, boolean curved, Polygon polygon) {
    /** Vertices nearer than this are one, mm. */
    static final double SAME = 0.01;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final double SAGITTA = 0.05;

    /** The contour of vertices, empty if it has no area to speak of. */
    static Optional<Contour> of(String layer, List<Vertex> vertices, boolean curved) {
        List<Vertex> clean = clean(vertices);
        if (clean.size() < 2 || (clean.size() == 2 && clean.stream().allMatch(v -> v.bulge() == 0))) {
            return Optional.empty();
        }
        Contour contour = made(layer, clean, curved);
        return Optional.of(signedArea(contour.polygon) < 0 ? made(layer, turned(clean), curved) : contour);
    }

    /** A whole circle as two half circles. */
    static Contour circle(String layer, Point centre, double radius) {
        return made(
                layer,
                List.of(
                        new Vertex(centre.x() - radius, centre.y(), 1),
                        new Vertex(centre.x() + radius, centre.y(), 1)),
                false);
    }

    private static Contour made(String layer, List<Vertex> vertices, boolean curved) {
        Path path = new Path(vertices, true);
        return new Contour(layer, path, curved, polygon(path));
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
        if (out.size() > 1 && out.get(out.size() - 1).point().distance(out.get(0).point()) < SAME) {
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

    private static Polygon polygon(Path path) {
        List<Coordinate> ring = new ArrayList<>();
        List<Shape> parts = path.parts();
        for (int i = 0; i < parts.size(); i++) {
            Point a = path.vertices().get(i).point();
            ring.add(new Coordinate(a.x(), a.y()));
            if (parts.get(i) instanceof Arc arc) {
                chords(arc).forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
            }
        }
        if (ring.size() < 3) {
            ring.add(new Coordinate(ring.get(0)));
        }
        ring.add(new Coordinate(ring.get(0)));
        return GEOMETRY.createPolygon(ring.toArray(Coordinate[]::new));
    }

    /** Points between the ends of an arc. */
    private static List<Point> chords(Arc arc) {
        double step = 2 * Math.toDegrees(StrictMath.acos(1 - Math.min(0.5, SAGITTA / arc.radius())));
        int n = (int) Math.min(2000, Math.max(2, Math.ceil(Math.abs(arc.sweep()) / step)));
        List<Point> points = new ArrayList<>();
        for (int i = 1; i < n; i++) {
            points.add(arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / n));
        }
        return points;
    }

    private static double signedArea(Polygon polygon) {
        Coordinate[] c = polygon.getExteriorRing().getCoordinates();
        double sum = 0;
        for (int i = 0; i + 1 < c.length; i++) {
            sum += (c[i].x - c[0].x) * (c[i + 1].y - c[0].y) - (c[i + 1].x - c[0].x) * (c[i].y - c[0].y);
        }
        return sum / 2;
    }

    /** Area of it or, if it crosses itself, of the box around it, mm2: how much it matters. */
    double weight() {
        return crossing().isEmpty() ? polygon.getArea() : polygon.getEnvelope().getArea();
    }

    double area() {
        return polygon.getArea();
    }

    Envelope box() {
        return polygon.getEnvelopeInternal();
    }

    /** A place where it crosses or touches itself, if there is one. */
    Optional<Point> crossing() {
        TopologyValidationError error = new IsValidOp(polygon).getValidationError();
        return Optional.ofNullable(error)
                .map(e -> new Point(e.getCoordinate().x, e.getCoordinate().y));
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
        Envelope a = box();
        Envelope b = other.box();
        double off = Math.max(
                Math.max(Math.abs(a.getMinX() - b.getMinX()), Math.abs(a.getMaxX() - b.getMaxX())),
                Math.max(Math.abs(a.getMinY() - b.getMinY()), Math.abs(a.getMaxY() - b.getMaxY())));
        return off < 0.1 && Math.abs(area() - other.area()) <= 1e-4 * area() + 0.1;
    }
}
