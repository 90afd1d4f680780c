package org.runbend.optimizer.job.read;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/** What a floor must hold before anybody lays pipe on it. */
final class FloorRules {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final double SQUARE_METRE = 1e6;
    private static final double LARGEST = 25 * SQUARE_METRE;
    /** No van, boat or hut is longer, mm; a thin floor of thousands of places would be laid for minutes. */
    private static final double LONGEST = 25_000;
    /** Below this no loop of the least spacing has room; most often the sizes were typed in another unit. */
    private static final double SMALLEST = 0.01 * SQUARE_METRE;
    /** How far outside the outline a port may lie, mm. */
    private static final double FARTHEST_PORT = 300;
    /** Corners nearer than this are one corner, mm. */
    private static final double SAME = 0.01;

    private final Polygon floor;

    private FloorRules(Polygon floor) {
        this.floor = floor;
    }

    /** The rules of a floor, empty if its outline is none; what is wrong is noted at the place given. */
    static Optional<FloorRules> of(List<Point> outline, YamlValue place) {
        if (!isRegion(outline, place, "the outline")) {
            return Optional.empty();
        }
        Polygon floor = polygon(outline);
        double area = floor.getArea();
        if (area > LARGEST) {
            place.fault("the floor has " + metres(area) + " m2, at most 25 m2 are possible");
        } else if (length(floor) > LONGEST) {
            place.fault("the floor is " + metres(SQUARE_METRE / 1000 * length(floor))
                    + " m long, at most 25 m are possible;" + " is the unit right?");
        } else if (area < SMALLEST) {
            place.fault("the floor measures "
                    + Plain.number(floor.getEnvelopeInternal().getWidth()) + " x "
                    + Plain.number(floor.getEnvelopeInternal().getHeight())
                    + " mm, too small for any loop; is the unit right?");
        }
        return Optional.of(new FloorRules(floor));
    }

    private static double length(Polygon floor) {
        return Math.max(
                floor.getEnvelopeInternal().getWidth(),
                floor.getEnvelopeInternal().getHeight());
    }

    private static String metres(double area) {
        return String.format(Locale.ROOT, "%.2f", area / SQUARE_METRE);
    }

    /** Whether corners bound a region: three or more, none twice, no crossing. What is wrong is noted. */
    static boolean isRegion(List<Point> corners, YamlValue place, String what) {
        Optional<String> fault = faultOf(corners);
        fault.ifPresent(f -> place.fault(what + " " + f));
        return fault.isEmpty();
    }

    /** Why corners bound no region, as the end of a sentence. */
    static Optional<String> faultOf(List<Point> corners) {
        if (corners.size() < 3) {
            return Optional.of(
                    "has " + corners.size() + (corners.size() == 1 ? " point" : " points") + ", at least 3 are wanted");
        }
        for (int i = 0; i < corners.size(); i++) {
            int next = (i + 1) % corners.size();
            if (corners.get(i).distance(corners.get(next)) < SAME) {
                return Optional.of("has the same point twice: entries " + i + " and " + next);
            }
        }
        TopologyValidationError error = new IsValidOp(polygon(corners)).getValidationError();
        return Optional.ofNullable(error).map(e -> "crosses or touches itself near " + shown(e.getCoordinate()));
    }

    private static String shown(Coordinate c) {
        return "[" + Plain.number(c.x) + ", " + Plain.number(c.y) + "]";
    }

    private static Polygon polygon(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return GEOMETRY.createPolygon(ring);
    }

    /** Notes a keep-out that the floor does not feel. */
    void checkKeepOut(KeepOut keepOut, YamlValue place) {
        double reach = keepOut.clearance();
        Geometry bare = GEOMETRY.createPoint(new Coordinate(0, 0));
        if (keepOut.bare() instanceof Shape.Polygon p) {
            bare = polygon(p.corners());
        } else if (keepOut.bare() instanceof Shape.Circle c) {
            bare = point(c.centre());
            reach += c.radius();
        } else if (keepOut.bare() instanceof Shape.Spot s) {
            bare = point(s.at());
            reach += s.radius();
        }
        double away = floor.distance(bare) - reach;
        if (away > 0) {
            place.fault("keep-out " + Plain.quoted(keepOut.name()) + " lies " + Plain.number(away)
                    + " mm outside the floor, its clearance included");
        }
    }

    /** Notes an unheated region that lies outside the floor. */
    void checkUnheated(Job.Unheated unheated, YamlValue place) {
        double away = floor.distance(polygon(unheated.region().corners()));
        if (away > 0) {
            place.fault("unheated region " + Plain.quoted(unheated.name()) + " lies " + Plain.number(away)
                    + " mm outside the floor");
        }
    }

    /** Notes a support that the floor does not feel. */
    void checkSupport(Support support, YamlValue place) {
        double away = floor.distance(polygon(support.region().corners()));
        if (away > 0) {
            place.fault("support " + Plain.quoted(support.name()) + " lies " + Plain.number(away)
                    + " mm outside the floor");
        }
    }

    /** Notes a port that is too far from the floor. */
    void checkPort(Point port, YamlValue place) {
        double away = floor.distance(point(port));
        if (away > FARTHEST_PORT) {
            place.fault("the port lies " + Plain.number(away) + " mm outside the floor, at most "
                    + Plain.number(FARTHEST_PORT) + " mm are possible");
        }
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }
}
