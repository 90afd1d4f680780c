package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/** Reads what a fitter wants of the loop beside its sizes: rules for pipe and what was met on site. */
final class WishReader {
    private static final int MOST = 200;
    private static final int MOST_POINTS = 2000;
    private static final double LARGEST = 20_000;
    private static final String LINE = "a line [[x, y], [x, y]]";
    /** A line that is off the lattice's direction by this is not meant to lie on it, degrees. */
    private static final double SAME_DIRECTION = 0.01;

    private WishReader() {}

    /** The rules for pipe of a layout; those that are faulty are left out, their faults noted. */
    static List<PipeRule> pipeRules(YamlMap layout, OptionalDouble along, List<PipeRule.Kept> kept) {
        List<PipeRule> pipeRules =
                layout.each("veto", MOST, "a list of vetoes such as {noBend: [x, y, r]}", WishReader::veto);
        layout.find("veto").ifPresent(place -> checkDirections(pipeRules, along, kept, place));
        return pipeRules;
    }

    /** The parts of the loop that are already routed, each held against the lattice that the first one sets. */
    static List<PipeRule.Kept> kept(YamlMap layout, OptionalDouble along, double spacing, double radius) {
        Optional<YamlValue> written = layout.find("keepLaid");
        if (written.isEmpty()) {
            return List.of();
        }
        KeptParts parts = new KeptParts(along, spacing, radius);
        for (YamlValue part : written.get().list(1, MOST, "a list of parts such as [[x, y], [x, y]]")) {
            List<YamlValue> entries = part.list(2, MOST_POINTS, "a list of at least 2 points [x, y]");
            List<Point> points =
                    entries.stream().flatMap(v -> FloorReader.point(v).stream()).toList();
            if (points.size() == entries.size() && points.size() > 1) {
                parts.read(part, entries, points);
            }
        }
        return parts.read();
    }

    private static Optional<PipeRule> veto(YamlValue value) {
        YamlMap m = value.map();
        Optional<YamlValue> noBend = m.find("noBend");
        Optional<YamlValue> noPipe = m.find("noPipe");
        Optional<YamlValue> mustRun = m.find("mustRun");
        long given = List.of(noBend, noPipe, mustRun).stream()
                .filter(Optional::isPresent)
                .count();
        if (given != 1) {
            value.fault("a veto has one of the keys noBend, noPipe and mustRun, not " + given);
        }
        Optional<PipeRule> read = noBend.flatMap(WishReader::noBend)
                .or(() -> noPipe.flatMap(v -> noPipe(v)))
                .or(() -> mustRun.flatMap(WishReader::mustRun));
        return m.make(read::orElseThrow);
    }

    private static Optional<PipeRule> noBend(YamlValue value) {
        List<YamlValue> parts = value.list(3, 3, "a circle [x, y, radius]");
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        double x = parts.get(0).length(-LARGEST, LARGEST);
        double y = parts.get(1).length(-LARGEST, LARGEST);
        double radius = parts.get(2).length(1, LARGEST);
        return Double.isNaN(x + y + radius)
                ? Optional.empty()
                : Optional.of(new PipeRule.NoBend(value.path(), new Point(x, y), radius));
    }

    private static Optional<PipeRule> noPipe(YamlValue value) {
        return FloorReader.polygon(value).map(region -> new PipeRule.NoPipe(value.path(), (Shape.Polygon) region));
    }

    private static Optional<PipeRule> mustRun(YamlValue value) {
        return line(value).map(ends -> new PipeRule.MustRun(value.path(), ends.get(0), ends.get(1)));
    }

    /** Two points that differ. */
    static Optional<List<Point>> line(YamlValue value) {
        List<Point> ends = value.list(2, 2, LINE).stream()
                .flatMap(v -> FloorReader.point(v).stream())
                .toList();
        if (ends.size() == 2 && ends.get(0).distance(ends.get(1)) < 1) {
            value.fault("the line has no length");
            return Optional.empty();
        }
        return ends.size() == 2 ? Optional.of(ends) : Optional.empty();
    }

    /** Runs lie along two directions at right angles; lines that ask for others cannot all be had. */
    private static void checkDirections(
            List<PipeRule> pipeRules, OptionalDouble along, List<PipeRule.Kept> kept, YamlValue place) {
        List<PipeRule.MustRun> lines = new ArrayList<>();
        pipeRules.stream()
                .filter(PipeRule.MustRun.class::isInstance)
                .map(PipeRule.MustRun.class::cast)
                .forEach(lines::add);
        for (PipeRule.MustRun line : lines) {
            double wanted = along.orElse(
                    kept.isEmpty() ? lines.get(0).direction() : kept.get(0).direction());
            if (apart(line.direction(), wanted) > SAME_DIRECTION) {
                String other = along.isPresent()
                        ? "layout.along"
                        : kept.isEmpty() ? lines.get(0).key() : kept.get(0).key();
                place.fault(line.key() + " runs at " + Plain.number(line.direction()) + " degrees, " + other
                        + " lays runs at " + Plain.number(wanted % 90) + " and " + Plain.number(wanted % 90 + 90)
                        + " degrees: both cannot be had");
            }
        }
    }

    /** How far two directions are from lying on one square lattice, degrees. */
    private static double apart(double a, double b) {
        double off = Math.abs(a - b) % 90;
        return Math.min(off, 90 - off);
    }

    /** A support of the floor; empty if something was wrong. */
    static Optional<Support> support(YamlValue value) {
        YamlMap m = value.map();
        String name = m.get("name", YamlValue::text, "support");
        Optional<List<Point>> ends = line(m.require("line", LINE));
        double width = m.require("width", "a length").length(1, 1000);
        Support.Crossing cross = m.get("cross", v -> v.oneOf(Support.Crossing.class), Support.Crossing.SQUARE);
        return m.make(() ->
                new Support(name, ends.orElseThrow().get(0), ends.orElseThrow().get(1), width, cross));
    }
}
