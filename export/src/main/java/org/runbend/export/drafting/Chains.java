package org.runbend.export.drafting;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;

/** Joins segments that share an end to lines as long as can be, and drops corners that hardly turn. */
final class Chains {
    /** What a corner may lie off the line between its neighbours to be dropped, mm. */
    private static final double FLAT = 0.4;

    private final List<Segment> segments;
    private final Map<Point, List<Integer>> at = new LinkedHashMap<>();
    private final boolean[] used;

    Chains(List<Segment> segments) {
        this.segments = segments.stream().filter(s -> !s.a().equals(s.b())).toList();
        used = new boolean[this.segments.size()];
        for (int i = 0; i < this.segments.size(); i++) {
            at.computeIfAbsent(this.segments.get(i).a(), p -> new ArrayList<>()).add(i);
            at.computeIfAbsent(this.segments.get(i).b(), p -> new ArrayList<>()).add(i);
        }
    }

    /** The lines; closed ones as polygons. */
    List<Path> paths() {
        List<Path> paths = new ArrayList<>();
        for (int i = 0; i < segments.size(); i++) {
            if (!used[i]) {
                used[i] = true;
                Deque<Point> line = new ArrayDeque<>();
                line.add(segments.get(i).a());
                line.add(segments.get(i).b());
                while (grow(line, true) || grow(line, false)) {
                    // until neither end goes on
                }
                add(new ArrayList<>(line), paths);
            }
        }
        return paths;
    }

    private boolean grow(Deque<Point> line, boolean last) {
        Point end = last ? line.getLast() : line.getFirst();
        for (int i : at.get(end)) {
            if (!used[i]) {
                used[i] = true;
                Segment s = segments.get(i);
                Point next = s.a().equals(end) ? s.b() : s.a();
                if (last) {
                    line.addLast(next);
                } else {
                    line.addFirst(next);
                }
                return true;
            }
        }
        return false;
    }

    private static void add(List<Point> line, List<Path> paths) {
        boolean closed = line.size() > 3 && line.get(0).equals(line.get(line.size() - 1));
        List<Point> kept = straightened(line);
        if (closed && kept.size() > 3) {
            paths.add(Path.polygon(kept.subList(0, kept.size() - 1)));
        } else if (kept.size() >= 2) {
            paths.add(Path.polyline(kept));
        }
    }

    /** Keeps a corner once any that was dropped since the last one would lie off the line. */
    private static List<Point> straightened(List<Point> line) {
        List<Point> kept = new ArrayList<>();
        kept.add(line.get(0));
        int from = 0;
        for (int i = 2; i < line.size(); i++) {
            boolean flat = true;
            for (int j = from + 1; j < i && flat; j++) {
                flat = off(line.get(j), line.get(from), line.get(i)) <= FLAT;
            }
            if (!flat) {
                from = i - 1;
                kept.add(line.get(from));
            }
        }
        kept.add(line.get(line.size() - 1));
        return kept;
    }

    private static double off(Point p, Point a, Point b) {
        double length = a.distance(b);
        if (length == 0) {
            return p.distance(a);
        }
        return Math.abs((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x())) / length;
    }
}
