package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;

/**
 * Finds the stretches of the runs that can take plates.
 *
 * <p>A stretch keeps the bend clearance from each bend and lies on heated floor; a plate body of the given width on it
 * stays inside the outline and off each bare keep-out by the plate clearance, but for {@value #HAIR} mm. What blocks a run
 * is cut out as one interval for each region. By area nothing is forgiven: a bolt's head is small, and a body over the rim
 * of a circle of 40 mm by 1.6 mm shares no more than 25 mm2 with it. Only at the outline, where a body may lie on the edge,
 * slivers of under {@value #FORGIVEN} mm2 block nothing.
 */
public final class StretchFinder {
    /** mm2: common practice, less than the sawing tolerance of a plate's end. */
    private static final double FORGIVEN = 25;

    /** mm: nobody measures a wall to this. */
    private static final double HAIR = 0.1;

    /** mm: a corner of the floor that reaches deeper into a body than this blocks it, however thin it is. */
    private static final double DEEPEST = 0.9;

    /** mm: noise of doubles on a turned lattice. */
    private static final double NOISE = 1e-6;

    private final Job.PlateRequest request;
    private final double width;
    private final Geometry outline;
    private final Geometry nearOutline;
    private final List<Solid> solid = new ArrayList<>();
    private final List<Geometry> cold = new ArrayList<>();

    /**
     * What no plate touches, grown by the plate clearance.
     *
     * @param whole all of it
     * @param core without a hair on all sides: a body that stays off it is as good as off it all
     */
    private record Solid(Geometry whole, Geometry core) {
        static Solid of(Geometry bare, double clearance) {
            Geometry whole = bare.buffer(clearance, 32);
            Geometry core = bare.buffer(clearance - HAIR, 32);
            return new Solid(whole, core.isEmpty() ? whole : core);
        }
    }

    /**
     * Describes the floor.
     *
     * @param floor outline, keep-outs, supports and unheated regions
     * @param request clearances and least piece
     * @param width of the plate body, mm
     * @param slots where pipe turns into its holes; no body lies on one
     */
    public StretchFinder(Job.FloorPlan floor, Job.PlateRequest request, double width, List<Slot> slots) {
        this.request = request;
        this.width = width;
        Polygon bare = FloorShapes.polygon(floor.outline());
        this.outline = bare.buffer(HAIR);
        this.nearOutline = bare.buffer(DEEPEST);
        for (KeepOut k : floor.plateless()) {
            solid.add(Solid.of(FloorShapes.bare(k.bare()), request.plateClearance()));
        }
        for (Slot s : slots) {
            solid.add(Solid.of(FloorShapes.line(s.from(), s.to()).buffer(s.width() / 2, 32), 0));
        }
        for (Job.Unheated u : floor.unheated()) {
            cold.add(FloorShapes.polygon(u.region().corners()));
        }
    }

    /** Stretches of all loops in order of flow, each at least {@code minPiece} long. */
    public List<PlateStretch> find(List<Breakdown> loops) {
        List<PlateStretch> found = new ArrayList<>();
        for (int loop = 0; loop < loops.size(); loop++) {
            List<Element> elements = loops.get(loop).elements();
            for (int i = 0; i < elements.size(); i++) {
                if (elements.get(i) instanceof Element.Run run
                        && !loops.get(loop).isLead(i)) {
                    double from = isBend(elements, i - 1) ? request.bendClearance() : 0;
                    double to = run.length() - (isBend(elements, i + 1) ? request.bendClearance() : 0);
                    for (double[] part : free(run, from, to)) {
                        found.add(new PlateStretch(loop, i, part[0], part[1]));
                    }
                }
            }
        }
        return found;
    }

    private static boolean isBend(List<Element> elements, int i) {
        return i >= 0 && i < elements.size() && elements.get(i) instanceof Element.Bend;
    }

    /** The parts of a line between two distances from its start where a body has room, each at least a piece long. */
    List<double[]> free(Element.Run run, double from, double to) {
        List<double[]> parts = new ArrayList<>();
        if (to - from < request.minPiece() - NOISE) {
            return parts;
        }
        parts.add(new double[] {from, to});
        Geometry body = body(run, from, to);
        for (Solid thing : solid) {
            if (thing.core().intersects(body)) {
                parts = without(parts, run, OverlayNGRobust.overlay(body, thing.whole(), OverlayNG.INTERSECTION), 0);
            }
        }
        Geometry outside = OverlayNGRobust.overlay(body, outline, OverlayNG.DIFFERENCE);
        for (int i = 0; i < outside.getNumGeometries(); i++) {
            Geometry part = outside.getGeometryN(i);
            parts = without(parts, run, part, nearOutline.covers(part) ? FORGIVEN : -1);
        }
        Geometry line = FloorShapes.line(run.along(from), run.along(to));
        for (Geometry region : cold) {
            Geometry hit = OverlayNGRobust.overlay(line, region, OverlayNG.INTERSECTION);
            for (int i = 0; i < hit.getNumGeometries(); i++) {
                parts = without(parts, run, hit.getGeometryN(i), -1);
            }
        }
        return apart(parts.stream().filter(this::isLong).toList());
    }

    private boolean isLong(double[] part) {
        return part[1] - part[0] >= Math.max(1, request.minPiece()) - NOISE;
    }

    /** Where less than a gap blocks the run, the next part begins a gap after the one before, as pieces of both must. */
    private List<double[]> apart(List<double[]> parts) {
        List<double[]> apart = new ArrayList<>();
        double least = Double.NEGATIVE_INFINITY;
        for (double[] p : parts) {
            double[] later = {Math.max(p[0], least), p[1]};
            if (isLong(later)) {
                apart.add(later);
                least = p[1] + request.gap();
            }
        }
        return apart;
    }

    private static List<double[]> without(List<double[]> parts, Element.Run run, Geometry hit, double forgiven) {
        if (hit.isEmpty() || hit.getArea() <= forgiven) {
            return parts;
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Coordinate c : hit.getCoordinates()) {
            double s = project(run, c);
            low = Math.min(low, s);
            high = Math.max(high, s);
        }
        List<double[]> left = new ArrayList<>();
        for (double[] p : parts) {
            if (high <= p[0] || low >= p[1]) {
                left.add(p);
            } else {
                left.add(new double[] {p[0], low});
                left.add(new double[] {high, p[1]});
            }
        }
        return left.stream().filter(p -> p[1] > p[0]).toList();
    }

    private static double project(Element.Run run, Coordinate c) {
        double length = run.length();
        double ux = (run.to().x() - run.from().x()) / length;
        double uy = (run.to().y() - run.from().y()) / length;
        return (c.x - run.from().x()) * ux + (c.y - run.from().y()) * uy;
    }

    private Polygon body(Element.Run run, double from, double to) {
        double length = run.length();
        double nx = -(run.to().y() - run.from().y()) / length * width / 2;
        double ny = (run.to().x() - run.from().x()) / length * width / 2;
        Point a = run.along(from);
        Point b = run.along(to);
        return FloorShapes.polygon(List.of(
                new Point(a.x() + nx, a.y() + ny),
                new Point(b.x() + nx, b.y() + ny),
                new Point(b.x() - nx, b.y() - ny),
                new Point(a.x() - nx, a.y() - ny)));
    }
}
