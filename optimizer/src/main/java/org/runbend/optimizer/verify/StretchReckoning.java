package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Reckons anew which parts of the runs can take plates: on heated floor, clear of bends, where a body of the narrowest
 * product stays on the floor and off keep-outs, and at least a shortest piece long. Sizes in mm.
 */
final class StretchReckoning {
    /** A sliver that a body may share with another body or with what lies outside the outline, mm2. */
    static final double SLIVER = 25;

    /** What a measure may be off, mm. */
    static final double FORGIVEN = 0.1;

    /** How deep a sliver of a body may lie outside the outline, mm: nearly the 1 mm that a piece is allowed. */
    private static final double OUTSIDE = 0.9;

    private final Job.PlateRequest request;
    private final Geometry floor;
    private final Geometry around;
    private final List<Geometry> solid = new ArrayList<>();
    private final List<Geometry> deep = new ArrayList<>();
    private final List<Polygon> cold = new ArrayList<>();

    /** A part of a run, as distances from its start. */
    record Span(int loop, int element, double from, double to) {
        double length() {
            return to - from;
        }
    }

    StretchReckoning(
            Job.PlateRequest request,
            List<Point> outline,
            List<KeepOut> keepOuts,
            List<Shape.Polygon> unheated,
            List<Slot> slots) {
        this.request = request;
        this.floor = GroundShapes.region(outline).buffer(FORGIVEN, 1, BufferParameters.CAP_SQUARE);
        this.around = GroundShapes.region(outline).buffer(OUTSIDE);
        for (KeepOut k : keepOuts) {
            solid.add(GroundShapes.grown(k.bare(), request.plateClearance()));
            deep.add(deep(k.bare(), request.plateClearance()));
        }
        for (Slot s : slots) {
            solid.add(GroundShapes.slot(s));
            deep.add(GroundShapes.slot(s).buffer(-FORGIVEN));
        }
        unheated.forEach(u -> cold.add(GroundShapes.region(u.corners())));
    }

    /** A region grown by nearly a distance, into which no body reaches; a thin one that this eats up as it is. */
    static Geometry deep(Shape bare, double by) {
        Geometry deep = GroundShapes.grown(bare, by - FORGIVEN);
        return deep.isEmpty() ? GroundShapes.grown(bare, by) : deep;
    }

    /** All stretches, in order of flow. */
    List<Span> stretches(List<Breakdown> loops) {
        List<Span> all = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            List<Element> elements = loops.get(i).elements();
            for (int j = 0; j < elements.size(); j++) {
                if (elements.get(j) instanceof Element.Run run && !loops.get(i).isLead(j)) {
                    addOf(run, clear(elements, i, j), all);
                }
            }
        }
        return all;
    }

    /** What bends leave of a run. */
    Span clear(List<Element> elements, int loop, int element) {
        boolean after = element > 0 && elements.get(element - 1) instanceof Element.Bend;
        boolean before = element + 1 < elements.size() && elements.get(element + 1) instanceof Element.Bend;
        double length = GroundShapes.line(
                        elements.get(element).from(), elements.get(element).to())
                .getLength();
        return new Span(
                loop, element, after ? request.bendClearance() : 0, length - (before ? request.bendClearance() : 0));
    }

    private void addOf(Element.Run run, Span whole, List<Span> all) {
        double least = Math.max(request.minPiece(), 1) - FORGIVEN;
        if (whole.length() < least || request.products().isEmpty()) {
            return;
        }
        double at = whole.from();
        double free = whole.from();
        for (double[] b : blocked(run, whole)) {
            free = addIfLong(new Span(whole.loop(), whole.element(), Math.max(at, free), b[0]), least, all, free);
            at = Math.max(at, b[1]);
        }
        addIfLong(new Span(whole.loop(), whole.element(), Math.max(at, free), whole.to()), least, all, free);
    }

    /** Adds a span and tells from where the next one may begin: pieces of both must keep the gap. */
    private double addIfLong(Span span, double least, List<Span> all, double free) {
        if (span.length() < least) {
            return free;
        }
        all.add(span);
        return span.to() + request.gap();
    }

    /** Where no body can lie, as distances from the run's start, first one first; they may overlap. */
    private List<double[]> blocked(Element.Run run, Span whole) {
        Point a = GroundShapes.along(run.from(), run.to(), whole.from());
        Point b = GroundShapes.along(run.from(), run.to(), whole.to());
        double width = request.products().stream()
                .mapToDouble(SpreaderPlate::width)
                .min()
                .orElseThrow();
        Polygon body = GroundShapes.strip(a, b, width);
        List<double[]> blocked = new ArrayList<>();
        for (int i = 0; i < solid.size(); i++) {
            // a keep-out blocks from its first to its last touch: nobody wants a plate between the legs of one
            if (deep.get(i).distance(body) == 0) {
                project(OverlayNGRobust.overlay(body, solid.get(i), OverlayNG.INTERSECTION), 0, run, blocked);
            }
        }
        Geometry outside = OverlayNGRobust.overlay(body, floor, OverlayNG.DIFFERENCE);
        for (int i = 0; i < outside.getNumGeometries(); i++) {
            Geometry part = outside.getGeometryN(i);
            project(part, around.covers(part) ? SLIVER : -1, run, blocked);
        }
        for (Polygon c : cold) {
            Geometry part = OverlayNGRobust.overlay(GroundShapes.line(a, b), c, OverlayNG.INTERSECTION);
            projectEach(part, -1, run, blocked);
        }
        blocked.sort(Comparator.comparingDouble(s -> s[0]));
        return blocked;
    }

    private static void projectEach(Geometry parts, double sliver, Element.Run run, List<double[]> blocked) {
        for (int i = 0; i < parts.getNumGeometries(); i++) {
            project(parts.getGeometryN(i), sliver, run, blocked);
        }
    }

    private static void project(Geometry part, double sliver, Element.Run run, List<double[]> blocked) {
        if (part.isEmpty() || part.getArea() <= sliver || part.getDimension() == 0) {
            return;
        }
        double[] span = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (Coordinate c : part.getCoordinates()) {
            double s = distanceAlong(run, c);
            span[0] = Math.min(span[0], s);
            span[1] = Math.max(span[1], s);
        }
        blocked.add(span);
    }

    private static double distanceAlong(Element.Run run, Coordinate c) {
        double ux = run.to().x() - run.from().x();
        double uy = run.to().y() - run.from().y();
        return ((c.x - run.from().x()) * ux + (c.y - run.from().y()) * uy) / Math.sqrt(ux * ux + uy * uy);
    }
}
