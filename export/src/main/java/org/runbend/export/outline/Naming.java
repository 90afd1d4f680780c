package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.runbend.export.drawing.Point;

/** Gives words to what they stand beside: keep-outs first, nearest pairs first, then unheated floor, then sides. */
final class Naming {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final int MOST_MARKS = 20;
    /** How far words may stand off what they name, mm; tall words stand further off. */
    private static final double BESIDE = 120;

    private static final double BESIDE_OURS = 400;
    private static final double IN_HEIGHTS = 3;
    private static final double BESIDE_EDGE = 250;
    private static final String NAMELESS = "unheated";
    private static final List<String> KINDS = List.of("vent", "drain", "bolt", "anchor", "pillar", "hatch");

    private final double beside;
    private final Contour outline;
    private final Geometry floor;
    private final List<Obstacle> obstacles;
    private final List<Geometry> regions;
    private final List<Obstacle> unheated;
    private final List<FloorSketch.Mark> marks = new ArrayList<>();
    private final List<FloorSketch.Remark> remarks = new ArrayList<>();
    private int numbers;
    private int untold;

    /** {@code ours}: in our own drawings names may stand farther off, with a line that leads to their thing. */
    Naming(Contour outline, List<Obstacle> obstacles, List<Obstacle> unheated, boolean ours) {
        beside = ours ? BESIDE_OURS : BESIDE;
        this.outline = outline;
        this.obstacles = new ArrayList<>(obstacles);
        this.unheated = new ArrayList<>(unheated);
        floor = outline.polygon();
        regions = obstacles.stream().map(Naming::region).toList();
    }

    List<Obstacle> obstacles() {
        return obstacles;
    }

    List<Obstacle> unheated() {
        return unheated;
    }

    List<FloorSketch.Mark> marks() {
        return marks;
    }

    List<FloorSketch.Remark> remarks() {
        return remarks;
    }

    /** Words that name nothing because they are numbers, such as those of dimensions. */
    int numbers() {
        return numbers;
    }

    /** Words that stand nowhere near, or are too many. */
    int untold() {
        return untold;
    }

    private static Geometry region(Obstacle o) {
        return o.contour().<Geometry>map(Contour::polygon).orElseGet(() -> point(o.centre()));
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }

    private record Pair(double distance, int obstacle, int word) {}

    void name(List<DrawnShapes.Words> words) {
        boolean[] named = new boolean[obstacles.size()];
        boolean[] spoken = new boolean[words.size()];
        for (Pair p : pairs(words)) {
            if (!named[p.obstacle] && !spoken[p.word]) {
                named[p.obstacle] = true;
                spoken[p.word] = true;
                Obstacle o = obstacles.get(p.obstacle);
                String text = words.get(p.word).text();
                obstacles.set(p.obstacle, o.named(text, kind(text).orElse(o.kind())));
            }
        }
        for (int w = 0; w < words.size(); w++) {
            if (!spoken[w]) {
                tell(words.get(w));
            }
        }
        numberNameless();
    }

    private List<Pair> pairs(List<DrawnShapes.Words> words) {
        List<Pair> pairs = new ArrayList<>();
        for (int w = 0; w < words.size(); w++) {
            double most = Math.max(beside, IN_HEIGHTS * words.get(w).height());
            for (int o = 0; o < obstacles.size() && !isNumber(words.get(w).text()); o++) {
                double distance = distance(o, words.get(w), most);
                if (distance <= most) {
                    pairs.add(new Pair(distance, o, w));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::distance)
                .thenComparingInt(Pair::obstacle)
                .thenComparingInt(Pair::word));
        return pairs;
    }

    /** How far words stand off, infinite if surely over {@code most}. */
    private double distance(int o, DrawnShapes.Words words, double most) {
        LineString line = GEOMETRY.createLineString(new Coordinate[] {
            new Coordinate(words.left().x(), words.left().y()),
            new Coordinate(words.right().x(), words.right().y())
        });
        Geometry region = regions.get(o);
        double radius = obstacles.get(o).radius();
        if (region.getEnvelopeInternal().distance(line.getEnvelopeInternal()) - radius > most) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.max(0, region.distance(line) - radius);
    }

    private static Optional<String> kind(String text) {
        String t = text.toLowerCase(Locale.ROOT);
        return KINDS.stream().filter(k -> t.matches(".*\\b" + k + "s?\\b.*")).findFirst();
    }

    private void tell(DrawnShapes.Words words) {
        Point at = words.middle();
        int cold = namelessAt(at);
        int edge = nearestEdge(words);
        if (isNumber(words.text())) {
            numbers++;
        } else if (cold >= 0) {
            unheated.set(
                    cold,
                    unheated.get(cold).named(words.text(), unheated.get(cold).kind()));
        } else if (edge >= 0 && marks.size() < MOST_MARKS) {
            marks.add(new FloorSketch.Mark(edge, at, words.text()));
        } else if (floor.covers(point(at)) && remarks.size() < MOST_MARKS) {
            remarks.add(new FloorSketch.Remark(at, words.text()));
        } else {
            untold++;
        }
    }

    private int namelessAt(Point at) {
        for (int i = 0; i < unheated.size(); i++) {
            Obstacle u = unheated.get(i);
            if (u.name().equals(NAMELESS) && region(u).covers(point(at))) {
                return i;
            }
        }
        return -1;
    }

    /** A dimension says nothing about what it stands beside. */
    private static boolean isNumber(String text) {
        return text.matches("[\\d.,'\"/x\u00d7\u00d8R+\u00b1 -]*(mm|cm|m|in|ft)?");
    }

    /** The entry of the outline whose side is nearest to words, -1 if all are far. */
    private int nearestEdge(DrawnShapes.Words words) {
        int best = -1;
        double least = BESIDE_EDGE;
        LineSegment written = new LineSegment(
                words.left().x(),
                words.left().y(),
                words.right().x(),
                words.right().y());
        for (int i = 0; i < outline.path().partCount(); i++) {
            Point a = outline.path().vertices().get(i).point();
            Point b = outline.path().end(i);
            double d = new LineSegment(a.x(), a.y(), b.x(), b.y()).distance(written);
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }

    private void numberNameless() {
        Map<String, Integer> numbered = new TreeMap<>();
        for (int i = 0; i < obstacles.size(); i++) {
            Obstacle o = obstacles.get(i);
            if (o.name().isEmpty()) {
                String word = o.contour().isPresent() ? "keep-out" : o.kind().equals("bolt") ? "bolt" : "hole";
                obstacles.set(i, o.named(word + " " + numbered.merge(word, 1, Integer::sum), o.kind()));
            }
        }
    }
}
