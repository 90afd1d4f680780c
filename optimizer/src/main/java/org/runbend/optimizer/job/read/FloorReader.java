package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/** Reads the floor: outline, marks, keep-outs, unheated regions and port. */
final class FloorReader {
    private static final int MOST_PARTS = 200;
    private static final int MOST_LOOPS = 6;
    private static final double FARTHEST = 1_000_000;
    private static final double LARGEST = 20_000;
    private static final double REACH_IN_SPACINGS = 2.2;
    private static final String POINT = "a point [x, y]";
    private static final String REGION = "a list of at least 3 points [x, y]";

    /** Air outside the keep-out that a person would call none, mm. */
    private static final double HAIR = 0.005;

    private final double spacing;
    private final Groove groove;
    private final List<String> warnings = new ArrayList<>();
    private final List<Job.MeasuredLength> measured = new ArrayList<>();
    private final List<String> cornerNames = new ArrayList<>();

    /**
     * A reader.
     *
     * @param spacing mm; NaN if it is not known
     * @param groove the groove that keeps off what stands on the floor
     */
    FloorReader(double spacing, Groove groove) {
        this.spacing = spacing;
        this.groove = groove;
    }

    /** The floor, empty if something was wrong. */
    Optional<Job.FloorPlan> floor(YamlMap m) {
        Optional<YamlValue> lengths = m.find("measured");
        YamlValue written = lengths.orElseGet(() -> m.require("outline", REGION));
        if (lengths.isPresent()) {
            m.find("outline").ifPresent(v -> v.fault("the floor is measured already: outline or measured, not both"));
        }
        Optional<Outline> read = lengths.isPresent() ? measured(written) : Outline.read(written);
        Optional<FloorRules> rules = read.flatMap(o -> FloorRules.of(o.corners(), written));
        Outline outline = read.orElseGet(() -> Outline.straight(List.of()));
        List<Job.FloorMark> marks = m.each("marks", MOST_PARTS, "a list of marks", v -> mark(v, outline));
        List<KeepOut> keepOuts = m.each("keepOut", MOST_PARTS, "a list of keep-outs", v -> keepOut(v, rules));
        List<Job.Unheated> unheated =
                m.each("unheated", MOST_PARTS, "a list of unheated regions", v -> unheated(v, rules));
        List<Support> supports = m.each("supports", MOST_PARTS, "a list of supports", v -> support(v, rules));
        List<Job.Below> below = m.each("below", MOST_PARTS, "a list of what lies under the floor", FloorReader::below);
        Optional<Job.Port> port = port(m.require("port", "a mapping such as {at: [0, 300]}"), rules);
        return m.make(() ->
                new Job.FloorPlan(outline.corners(), marks, keepOuts, unheated, supports, port.orElseThrow(), below));
    }

    /** What a person should look at, as far as the floor was read. */
    List<String> warnings() {
        return List.copyOf(warnings);
    }

    /** How each measured length fits; empty if the floor is not a measured one. */
    List<Job.MeasuredLength> measured() {
        return List.copyOf(measured);
    }

    /** The customer's names of the corners; empty if the floor is not a measured one. */
    List<String> cornerNames() {
        return List.copyOf(cornerNames);
    }

    private Optional<Outline> measured(YamlValue value) {
        return new MeasuredFloorReader().read(value).map(floor -> {
            warnings.addAll(floor.warnings());
            measured.addAll(floor.lengths());
            cornerNames.addAll(floor.names());
            return Outline.straight(floor.outline());
        });
    }

    /** A point [x, y], empty if it is none. */
    static Optional<Point> point(YamlValue value) {
        List<YamlValue> pair = value.list(2, 2, POINT);
        if (pair.isEmpty()) {
            return Optional.empty();
        }
        double x = pair.get(0).length(-FARTHEST, FARTHEST);
        double y = pair.get(1).length(-FARTHEST, FARTHEST);
        return Double.isNaN(x + y) ? Optional.empty() : Optional.of(new Point(x, y));
    }

    private static Optional<Job.FloorMark> mark(YamlValue value, Outline outline) {
        YamlMap m = value.map();
        String text = m.require("text", "what the mark says").text();
        Optional<YamlValue> edge = m.find("edge");
        Optional<YamlValue> point = m.find("point");
        if (edge.isPresent() == point.isPresent()) {
            value.fault("a mark stands at an edge or at a point: one of the two keys is wanted");
        }
        int index = edge.map(v -> v.whole(0, Math.max(0, outline.edges().size() - 1)))
                .filter(i -> i < outline.edges().size())
                .map(outline.edges()::get)
                .orElse(-1);
        Optional<Point> at = point.flatMap(FloorReader::point);
        return m.make(() -> new Job.FloorMark(text, at.orElseGet(() -> middle(outline.corners(), index)), index));
    }

    private static Point middle(List<Point> outline, int edge) {
        if (edge < 0 || outline.size() <= edge) {
            return new Point(0, 0);
        }
        Point a = outline.get(edge);
        Point b = outline.get((edge + 1) % outline.size());
        return new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }

    private static Optional<Job.Below> below(YamlValue value) {
        YamlMap m = value.map();
        String name = m.get("name", YamlValue::text, "under the floor");
        Optional<Shape> region = polygon(m.require("polygon", REGION));
        return m.make(() -> new Job.Below(name, (Shape.Polygon) region.orElseThrow()));
    }

    private Optional<KeepOut> keepOut(YamlValue value, Optional<FloorRules> rules) {
        YamlMap m = value.map();
        KeepOut.Kind kind = m.get("kind", v -> v.oneOf(KeepOut.Kind.class), KeepOut.Kind.OTHER);
        String name = m.get("name", YamlValue::text, "keep-out");
        OptionalDouble given = m.find("clearance")
                .map(v -> OptionalDouble.of(v.length(0, 2000)))
                .orElse(OptionalDouble.empty());
        Optional<Shape> shape = shape(m, kind.pointRadius());
        Optional<KeepOut> made = m.make(
                () -> new KeepOut(name, kind, shape.orElseThrow(), clearance(name, kind, shape.orElseThrow(), given)));
        made.ifPresent(k -> rules.ifPresent(r -> r.checkKeepOut(k, value)));
        return made;
    }

    /**
     * From the bare thing to the centreline: what the job asks, else half the groove and the air that its kind wants. Of a
     * point a clearance counts from the point itself. One that lets the groove cut into the thing is enlarged.
     */
    private double clearance(String name, KeepOut.Kind kind, Shape shape, OptionalDouble given) {
        if (given.isEmpty()) {
            return groove.half() + kind.air();
        }
        double own = shape instanceof Shape.Spot spot ? spot.radius() : 0;
        double asked = given.getAsDouble() - own;
        if (asked < groove.half() - HAIR) {
            warnings.add("Keep-out " + Plain.quoted(name) + ": a clearance of " + Plain.number(given.getAsDouble())
                    + " mm, counted to the middle of the pipe, would let the groove cut into it; "
                    + Plain.number(groove.half() + own) + " mm is taken, which leaves no air.");
        }
        return Math.max(asked, groove.half());
    }

    private static Optional<Shape> shape(YamlMap m, double pointRadius) {
        Optional<YamlValue> circle = m.find("circle");
        Optional<YamlValue> polygon = m.find("polygon");
        Optional<YamlValue> point = m.find("point");
        long given = List.of(circle, polygon, point).stream()
                .filter(Optional::isPresent)
                .count();
        if (given != 1) {
            m.self().fault("a keep-out has one of the keys circle, polygon and point, not " + given);
            return Optional.empty();
        }
        return circle.flatMap(FloorReader::circle)
                .or(() -> polygon.flatMap(FloorReader::polygon))
                .or(() -> point.flatMap(FloorReader::point).map(p -> new Shape.Spot(p, pointRadius)));
    }

    private static Optional<Shape> circle(YamlValue value) {
        YamlMap m = value.map();
        Optional<Point> centre = point(m.require("centre", POINT));
        double radius = m.require("radius", "a length").length(0.1, LARGEST);
        return m.make(() -> new Shape.Circle(centre.orElseThrow(), radius));
    }

    /** A region with straight sides, empty if it is none. */
    static Optional<Shape> polygon(YamlValue value) {
        return Outline.read(value)
                .map(Outline::corners)
                .filter(corners -> FloorRules.isRegion(corners, value, "the region"))
                .map(Shape.Polygon::new);
    }

    private static Optional<Job.Unheated> unheated(YamlValue value, Optional<FloorRules> rules) {
        YamlMap m = value.map();
        String name = m.get("name", YamlValue::text, "unheated");
        Optional<Shape> region = polygon(m.require("polygon", REGION));
        Optional<Job.Unheated> made = m.make(() -> new Job.Unheated(name, (Shape.Polygon) region.orElseThrow()));
        made.ifPresent(u -> rules.ifPresent(r -> r.checkUnheated(u, value)));
        return made;
    }

    private static Optional<Support> support(YamlValue value, Optional<FloorRules> rules) {
        Optional<Support> made = WishReader.support(value);
        made.ifPresent(s -> rules.ifPresent(r -> r.checkSupport(s, value)));
        return made;
    }

    private Optional<Job.Port> port(YamlValue value, Optional<FloorRules> rules) {
        YamlMap m = value.map();
        YamlValue at = m.require("at", POINT);
        Optional<Point> point = point(at);
        double least = REACH_IN_SPACINGS * spacing;
        double reach = m.get("reach", v -> Math.max(least, v.length(0, LARGEST)), least);
        point.ifPresent(p -> rules.ifPresent(r -> r.checkPort(p, at)));
        Job.Turn turn = m.get("turn", v -> v.oneOf(Job.Turn.class), Job.Turn.DOWN);
        List<Job.HolePair> holes =
                m.each("holes", MOST_LOOPS, "a list of pairs {flow: [x, y], return: [x, y]}", FloorReader::holes);
        return m.make(() -> new Job.Port(point.orElseThrow(), reach, turn, holes));
    }

    private static Optional<Job.HolePair> holes(YamlValue value) {
        YamlMap m = value.map();
        Optional<Point> flow = point(m.require("flow", POINT));
        Optional<Point> back = point(m.require("return", POINT));
        return m.make(() -> new Job.HolePair(flow.orElseThrow(), back.orElseThrow()));
    }
}
