package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Looks for numbers that are possible but seldom meant, and says why. The limits are common practice. */
final class Plausibility {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Factors between the units that people mix up. */
    private static final double[] SLIPS = {10, 25.4};
    /** A floor whose longer side is under this is seldom heated, mm. */
    private static final double SHORT_FLOOR = 700;
    /** Nobody drives or floats in anything longer that is one floor, mm. */
    private static final double LONG_FLOOR = 9000;

    private static final double MOST_COVERED = 0.5;
    private static final double SPACING_IN_DIAMETERS = 3;
    private static final double SHORT_TAIL = 20;
    private static final double LONG_TAIL = 15_000;
    /** Under this a factor between two numbers is chance, mm. */
    private static final double SMALL = 20;

    private static final double SAME = 1;

    private final Job.FloorPlan floor;
    private final List<String> warnings = new ArrayList<>();

    private Plausibility(Job.FloorPlan floor) {
        this.floor = floor;
    }

    /** Sentences for a person to think about; none for a job that looks right. */
    static List<String> of(Job.FloorPlan floor, Job.Layout layout, Job.PipeRequest pipe) {
        Plausibility p = new Plausibility(floor);
        p.checkSize();
        p.checkCorners();
        p.checkPort();
        p.checkKeepOuts();
        p.checkHandedness();
        p.checkSpacing(layout, pipe);
        p.checkTails(pipe);
        return List.copyOf(p.warnings);
    }

    private void checkSize() {
        Geometry outline = polygon(floor.outline());
        double width = outline.getEnvelopeInternal().getWidth();
        double height = outline.getEnvelopeInternal().getHeight();
        String size = "The floor measures " + Plain.number(width) + " x " + Plain.number(height) + " mm";
        if (Math.max(width, height) < SHORT_FLOOR) {
            warnings.add(size + ": were the sizes meant in centimetres (" + Plain.number(10 * width) + " x "
                    + Plain.number(10 * height) + " mm) or inches (" + Plain.number(25.4 * width) + " x "
                    + Plain.number(25.4 * height) + " mm)?");
        } else if (Math.max(width, height) > LONG_FLOOR) {
            warnings.add(size + ": is one of its sizes too long by a factor of 10, or by 25.4 for the inch?");
        }
    }

    /** A side that slants, and would not if one of its numbers had another unit. */
    private void checkCorners() {
        List<Point> corners = floor.outline();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            if (Math.abs(a.x() - b.x()) > SAME && Math.abs(a.y() - b.y()) > SAME) {
                factor(a.x(), b.x())
                        .or(() -> factor(a.y(), b.y()))
                        .ifPresent(text ->
                                warnings.add("The side from " + place(a) + " to " + place(b) + " slants, and " + text));
            }
        }
    }

    private static Optional<String> factor(double a, double b) {
        double smaller = Math.min(Math.abs(a), Math.abs(b));
        double larger = Math.max(Math.abs(a), Math.abs(b));
        for (double slip : SLIPS) {
            if (smaller > SMALL && Math.abs(smaller * slip - larger) <= SAME) {
                return Optional.of(Plain.number(a) + " and " + Plain.number(b) + " differ by a factor of "
                        + Plain.number(slip) + ": is one of them mistyped?");
            }
        }
        return Optional.empty();
    }

    private void checkPort() {
        Geometry outline = polygon(floor.outline());
        Geometry port = point(floor.port().at());
        double away = outline.distance(port);
        if (away > SAME) {
            warnings.add("The port lies " + Plain.number(away) + " mm outside the floor, beyond its wall: is it on the"
                    + " right side?");
        }
        floor.keepOuts().stream()
                .filter(k -> bare(k).distance(port) == 0)
                .forEach(k -> warnings.add("The port lies in keep-out " + Plain.quoted(k.name()) + "."));
    }

    private void checkKeepOuts() {
        Geometry outline = polygon(floor.outline());
        Geometry covered = GEOMETRY.createPolygon();
        for (KeepOut k : floor.keepOuts()) {
            covered = OverlayNGRobust.overlay(covered, bare(k).buffer(k.clearance()), OverlayNG.UNION);
        }
        double share = OverlayNGRobust.overlay(outline, covered, OverlayNG.INTERSECTION)
                        .getArea()
                / outline.getArea();
        if (share > MOST_COVERED) {
            warnings.add("Keep-outs with their clearance cover " + Math.round(100 * share)
                    + " % of the floor: are their sizes and clearances right?");
        }
    }

    private void checkHandedness() {
        MirrorTest mirror = new MirrorTest(floor);
        if (mirror.isSymmetric()) {
            return;
        }
        if (floor.marks().isEmpty()) {
            warnings.add(
                    "The floor differs from its mirror image and has no mark: name a side or a corner that a person"
                            + " recognises, such as floor.marks: [{edge: 0, text: door}], so that nobody lays it the wrong way"
                            + " round.");
        } else if (mirror.hidesFromMarks()) {
            warnings.add("The floor differs from its mirror image, but its outline and marks do not: add a mark to the"
                    + " left or right of the line that they mirror at, such as a door or a window.");
        }
    }

    private void checkSpacing(Job.Layout layout, Job.PipeRequest pipe) {
        double outer = pipe.product().outer();
        if (layout.spacing() < SPACING_IN_DIAMETERS * outer) {
            warnings.add("Spacing " + Plain.number(layout.spacing()) + " mm is under three diameters of pipe "
                    + pipe.product().sku() + " (" + Plain.number(outer)
                    + " mm): little floor is left between channels.");
        }
    }

    private void checkTails(Job.PipeRequest pipe) {
        Stream.of(pipe.flowTail(), pipe.returnTail())
                .filter(t -> (t > 0 && t < SHORT_TAIL) || t > LONG_TAIL)
                .forEach(t -> warnings.add("A tail of " + Plain.number(t)
                        + " mm is unusual: is its unit right (a number without unit is in the unit of the file)?"));
    }

    private static String place(Point p) {
        return "[" + Plain.number(p.x()) + ", " + Plain.number(p.y()) + "]";
    }

    private static Geometry bare(KeepOut k) {
        if (k.bare() instanceof Shape.Polygon p) {
            return polygon(p.corners());
        }
        if (k.bare() instanceof Shape.Circle c) {
            return point(c.centre()).buffer(c.radius());
        }
        Shape.Spot spot = (Shape.Spot) k.bare();
        return point(spot.at()).buffer(spot.radius());
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }

    private static Geometry polygon(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return GEOMETRY.createPolygon(ring);
    }
}
