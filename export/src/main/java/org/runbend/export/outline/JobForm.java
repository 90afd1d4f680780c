package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.precision.GeometryPrecisionReducer;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.job.read.RegionCheck;

/**
 * The form in which a job file holds a contour: sides with three decimals that its reader takes. A line that fits no form
 * as it was drawn becomes chords, and then chords a little off, until one does.
 */
final class JobForm {
    static final double LEAST_RADIUS = 5.01;
    private static final double MOST_RADIUS = 99_000;
    /** Chords that take the place of arcs and curves lie within this, mm; the last ones of lines with very many. */
    private static final double[] CHORDS = {0.5, 1, 2, 5};

    /** Points nearer than this do not bear rounding, mm. */
    private static final double FINE = 0.02;

    private static final double THOUSANDTHS = 1000;
    /** What is smaller hinders no pipe, mm2. */
    private static final double SMALLEST = 1;

    private static final int MIDDLE_PARTS = 8;

    private JobForm() {}

    /** A side as it is written. */
    record Side(Optional<Point> through, Point to) {}

    /** The sides of a contour, the first one a point. */
    static List<Side> sides(Contour contour) {
        List<Vertex> v = contour.path().vertices();
        int n = v.size();
        List<Side> sides = new ArrayList<>();
        sides.add(new Side(Optional.empty(), v.get(0).point()));
        for (int i = 0; i < n; i++) {
            Point to = v.get((i + 1) % n).point();
            boolean arc = v.get(i).bulge() != 0;
            if (arc || i + 1 < n) {
                sides.add(new Side(arc ? Optional.of(Tidying.middle(v.get(i), to)) : Optional.empty(), to));
            }
        }
        return sides;
    }

    /** Why the reader of jobs would refuse the contour. */
    static Optional<String> faultOf(Contour contour) {
        return RegionCheck.faultOf(sides(contour).stream()
                .map(s -> new RegionCheck.Side(s.through().map(JobForm::written), written(s.to())))
                .toList());
    }

    private static org.runbend.optimizer.job.Point written(Point p) {
        return new org.runbend.optimizer.job.Point(
                Double.parseDouble(FloorReading.n(p.x())), Double.parseDouble(FloorReading.n(p.y())));
    }

    /** The contour as a region of a job file; empty if it has no area to speak of. */
    static Optional<Contour> region(Contour drawn) {
        if (drawn.area() < SMALLEST) {
            return Optional.empty();
        }
        if (!drawn.curved()) {
            Optional<Contour> own = sound(Contour.of(drawn.layer(), withOwnArcs(drawn), false));
            if (own.isPresent()) {
                return own;
            }
        }
        for (double within : CHORDS) {
            Optional<Contour> chords = sound(ring(drawn, DouglasPeuckerSimplifier.simplify(drawn.polygon(), within)));
            if (chords.isPresent()) {
                return chords;
            }
        }
        return mended(drawn);
    }

    private static Optional<Contour> sound(Optional<Contour> contour) {
        return contour.filter(c -> faultOf(c).isEmpty());
    }

    /** Arcs that a job file can hold, chords in place of tighter ones and straight sides in place of flatter ones. */
    private static List<Vertex> withOwnArcs(Contour contour) {
        List<Vertex> out = new ArrayList<>();
        List<Shape> parts = contour.path().parts();
        for (int i = 0; i < parts.size(); i++) {
            Vertex v = contour.path().vertices().get(i);
            boolean own = !(parts.get(i) instanceof Arc a) || (a.radius() >= LEAST_RADIUS && a.radius() <= MOST_RADIUS);
            out.add(own ? v : new Vertex(v.x(), v.y(), 0));
            if (!own && parts.get(i) instanceof Arc a && a.radius() < LEAST_RADIUS) {
                for (int k = 1; k < MIDDLE_PARTS; k++) {
                    Point p = a.centre().polar(a.radius(), a.startAngle() + a.sweep() * k / MIDDLE_PARTS);
                    out.add(new Vertex(p.x(), p.y(), 0));
                }
            }
        }
        return out;
    }

    private static Optional<Contour> ring(Contour drawn, Geometry polygon) {
        Coordinate[] all = polygon.getCoordinates();
        List<Vertex> vertices = new ArrayList<>();
        for (int i = 0; i + 1 < all.length; i++) {
            vertices.add(new Vertex(all[i].x, all[i].y, 0));
        }
        return Contour.of(drawn.layer(), vertices, drawn.curved());
    }

    /** The largest part of what rounding leaves of it, where it comes so near to itself that it would touch. */
    private static Optional<Contour> mended(Contour drawn) {
        Geometry fine = TopologyPreservingSimplifier.simplify(drawn.polygon(), FINE);
        Geometry parts = GeometryPrecisionReducer.reduce(fine, new PrecisionModel(THOUSANDTHS));
        Polygon largest = null;
        for (int i = 0; i < parts.getNumGeometries(); i++) {
            if (parts.getGeometryN(i) instanceof Polygon p && (largest == null || p.getArea() > largest.getArea())) {
                largest = p;
            }
        }
        return largest == null || largest.isEmpty()
                ? Optional.empty()
                : sound(ring(drawn, largest.getExteriorRing())).filter(c -> c.area() >= SMALLEST);
    }
}
