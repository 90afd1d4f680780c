package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Point;

/**
 * An outline as it was written, with the chords of its arcs.
 *
 * @param corners all corners, ends of chords included
 * @param edges for each side as written the index of the corner before its middle chord
 */
record Outline(List<Point> corners, List<Integer> edges) {
    static final int MOST_CORNERS = 500;
    private static final String ENTRIES = "a list of at most " + MOST_CORNERS + " points [x, y]";

    /** Copies the lists. */
    Outline {
        corners = List.copyOf(corners);
        edges = List.copyOf(edges);
    }

    /** An outline without arcs. */
    static Outline straight(List<Point> corners) {
        List<Integer> edges = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            edges.add(i);
        }
        return new Outline(corners, edges);
    }

    /** Reads points [x, y] and arcs {arc: [through, to]}; empty if one of them was wrong. */
    static Optional<Outline> read(YamlValue value) {
        List<Point> corners = new ArrayList<>();
        List<Integer> places = new ArrayList<>();
        for (YamlValue entry : value.list(0, MOST_CORNERS, ENTRIES)) {
            List<Point> points = entry.isMap()
                    ? arc(entry, corners)
                    : FloorReader.point(entry).stream().toList();
            corners.addAll(points);
            if (!points.isEmpty()) {
                places.add(corners.size() - 1);
            }
        }
        if (!value.isList() || places.size() != value.size()) {
            return Optional.empty();
        }
        if (corners.size() > MOST_CORNERS) {
            value.fault("has " + corners.size() + " corners with the chords of its arcs, at most " + MOST_CORNERS
                    + " are possible");
            return Optional.empty();
        }
        return Optional.of(of(corners, places));
    }

    private static List<Point> arc(YamlValue entry, List<Point> before) {
        YamlMap m = entry.map();
        List<Point> two = m
                .require("arc", "a list of two points [through, to]")
                .list(2, 2, "a list of two points [through, to]")
                .stream()
                .flatMap(v -> FloorReader.point(v).stream())
                .toList();
        if (m.make(() -> two).isEmpty() || two.size() < 2) {
            return List.of();
        }
        if (before.isEmpty()) {
            entry.fault("an arc begins at the corner before it, so the first entry must be a point [x, y]");
            return List.of();
        }
        Optional<Arc> arc = Arc.of(before.get(before.size() - 1), two.get(0), two.get(1));
        if (arc.isEmpty()) {
            entry.fault("no arc passes through these points: they lie on a line, or its radius is under 5 mm");
        }
        return arc.map(a -> a.chords(two.get(1))).orElse(List.of());
    }

    /** Some people repeat the first corner at the end; that says nothing new, but an arc may have led there. */
    private static Outline of(List<Point> corners, List<Integer> places) {
        int n = corners.size();
        boolean closed = isClosed(corners);
        List<Integer> edges = new ArrayList<>();
        for (int i = 0; i + 1 < places.size(); i++) {
            edges.add((places.get(i) + places.get(i + 1) - 1) / 2);
        }
        if (!closed && !places.isEmpty()) {
            edges.add(n - 1);
        }
        return new Outline(unclosed(corners), edges);
    }

    /** The corners without the first one at their end. */
    static List<Point> unclosed(List<Point> corners) {
        return isClosed(corners) ? corners.subList(0, corners.size() - 1) : corners;
    }

    private static boolean isClosed(List<Point> corners) {
        int n = corners.size();
        return n > 3 && corners.get(0).equals(corners.get(n - 1));
    }
}
