package org.runbend.optimizer.job.read;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Rules of the holes that a job gives: inside the floor and off what stands on it, nothing under them, far enough from each
 * other. What depends on the loop is told when it is laid.
 */
final class HoleRules {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    /** A hole through the wall lies on it, as far as a tape can tell, mm. */
    private static final double ON_THE_WALL = 5;

    /** Rounding of what was turned or came in inches, mm. */
    private static final double HAIR = 0.01;

    private final Job.FloorPlan floor;
    private final Groove groove;
    private final Geometry outline;

    HoleRules(Job.FloorPlan floor, Groove groove) {
        this.floor = floor;
        this.groove = groove;
        this.outline = region(floor.outline());
    }

    /** Notes what is wrong with the holes at their places in the file. */
    void check(YamlMap map) {
        List<YamlValue> pairs = map.findMap("port")
                .flatMap(p -> p.find("holes"))
                .map(v -> v.list(0, Integer.MAX_VALUE, "a list"))
                .orElse(List.of());
        List<Job.HolePair> holes = floor.port().holes();
        for (int i = 0; i < holes.size() && pairs.size() == holes.size(); i++) {
            check("flow", holes.get(i).flow(), pairs.get(i));
            check("return", holes.get(i).back(), pairs.get(i));
            apart(holes.get(i).flow(), holes.get(i).back(), pairs.get(i));
            for (int j = 0; j < i; j++) {
                for (Point other : List.of(holes.get(j).flow(), holes.get(j).back())) {
                    apart(holes.get(i).flow(), other, pairs.get(i));
                    apart(holes.get(i).back(), other, pairs.get(i));
                }
            }
        }
    }

    private void check(String which, Point hole, YamlValue pair) {
        YamlValue place = pair.map().find(which).orElse(pair);
        wall(hole).ifPresent(place::fault);
        if (floor.port().turn() == Job.Turn.LEVEL) {
            return;
        }
        double half = groove.pad() / 2;
        for (KeepOut k : floor.keepOuts()) {
            double air = bare(k.bare()).distance(point(hole)) - radius(k.bare()) - half;
            if (air < -HAIR) {
                place.fault("a hole with its pocket of " + Plain.number(groove.pad()) + " mm would cut "
                        + Plain.number(-air) + " mm into keep-out " + Plain.quoted(k.name()));
            }
        }
        for (Job.Below b : floor.below()) {
            if (floor.port().turn() == Job.Turn.DOWN
                    && region(b.region().corners()).distance(point(hole)) < half) {
                place.fault("a hole here would be drilled into " + Plain.quoted(b.name()) + " under the floor");
            }
        }
    }

    private Optional<String> wall(Point hole) {
        double toWall = outline.getBoundary().distance(point(hole));
        if (outline.distance(point(hole)) > HAIR) {
            return Optional.of("the hole lies " + Plain.number(toWall) + " mm outside the floor");
        }
        if (floor.port().turn() == Job.Turn.LEVEL) {
            return toWall <= ON_THE_WALL
                    ? Optional.empty()
                    : Optional.of("with turn: level the pipe goes through the wall, and this hole lies "
                            + Plain.number(toWall) + " mm from it");
        }
        double asked = groove.pad() / 2 + groove.leastWeb();
        return toWall >= asked - HAIR
                ? Optional.empty()
                : Optional.of(
                        "the hole lies " + Plain.number(toWall) + " mm from the edge of the floor, half its pocket"
                                + " and the least web take " + Plain.number(asked) + " mm");
    }

    private void apart(Point a, Point b, YamlValue place) {
        double asked = (floor.port().turn() == Job.Turn.LEVEL ? groove.bendWidth() : groove.pad()) + groove.leastWeb();
        if (a.distance(b) < asked - HAIR) {
            place.fault("holes " + Plain.number(a.distance(b)) + " mm apart: pocket and least web take "
                    + Plain.number(asked) + " mm");
        }
    }

    private static double radius(Shape bare) {
        if (bare instanceof Shape.Circle c) {
            return c.radius();
        }
        return bare instanceof Shape.Spot s ? s.radius() : 0;
    }

    private static Geometry bare(Shape bare) {
        if (bare instanceof Shape.Polygon p) {
            return region(p.corners());
        }
        return point(bare instanceof Shape.Circle c ? c.centre() : ((Shape.Spot) bare).at());
    }

    private static Geometry point(Point p) {
        return SHAPES.createPoint(new Coordinate(p.x(), p.y()));
    }

    private static Geometry region(List<Point> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point p = corners.get(i % corners.size());
            ring[i] = new Coordinate(p.x(), p.y());
        }
        return SHAPES.createPolygon(ring);
    }
}
