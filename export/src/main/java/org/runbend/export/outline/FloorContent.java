package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/** What lies in an outline: holes, bolts and the words beside them. Clearances and sizes are common practice. */
final class FloorContent {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** A job file holds no more keep-outs. */
    private static final int MOST = 200;

    private static final int MOST_MARKS = 20;
    private static final double BOLT_DIAMETER = 20;
    private static final double DRAIN_DIAMETER = 100;
    private static final double BOLT_CLEARANCE = 50;
    private static final double DRAIN_CLEARANCE = 60;
    private static final double OTHER_CLEARANCE = 40;
    /** A closed line within the outline of more than this share of it is another outline, not a hole. */
    private static final double OTHER_OUTLINE = 0.5;
    /** How far words may stand off what they name, mm; tall words stand further off. */
    private static final double BESIDE = 120;

    private static final double IN_HEIGHTS = 3;
    private static final double BESIDE_EDGE = 250;

    private final Contour outline;
    private final Point shift;
    private final List<String> leftOut;
    private final PreparedGeometry floor;
    private final List<Obstacle> obstacles = new ArrayList<>();
    private final List<Contour> unheated = new ArrayList<>();
    private final List<FloorSketch.Mark> marks = new ArrayList<>();
    private final List<FloorSketch.Remark> remarks = new ArrayList<>();

    FloorContent(Contour found, Point shift, Figures figures, List<Contour> contours, List<String> guesses, List<String> leftOut) {
        this.shift = shift;
        this.leftOut = leftOut;
        floor = PreparedGeometryFactory.prepare(found.polygon());
        outline = moved(turnedToStart(new Tidying(guesses).tidied(turnedToStart(found))));
        holes(found, contours);
        bolts(figures.spots);
        limit();
        name(figures.words);
    }

    Contour outline() {
        return outline;
    }

    List<Obstacle> obstacles() {
        return obstacles;
    }

    List<Contour> unheated() {
        return unheated;
    }

    List<FloorSketch.Mark> marks() {
        return marks;
    }

    List<FloorSketch.Remark> remarks() {
        return remarks;
    }

    /** The same contour, beginning at its lowest corner, the leftmost of several. */
    private static Contour turnedToStart(Contour c) {
        List<Vertex> v = c.path().vertices();
        int first = 0;
        for (int i = 1; i < v.size(); i++) {
            double lower = v.get(first).y() - v.get(i).y();
            if (lower > Contour.SAME || (lower >= -Contour.SAME && v.get(i).x() < v.get(first).x())) {
                first = i;
            }
        }
        List<Vertex> turned = new ArrayList<>(v.subList(first, v.size()));
        turned.addAll(v.subList(0, first));
        return Contour.of(c.layer(), turned, c.curved()).orElse(c);
    }

    private Contour moved(Contour c) {
        List<Vertex> v = c.path().vertices().stream()
                .map(p -> new Vertex(p.x() + shift.x(), p.y() + shift.y(), p.bulge()))
                .toList();
        return Contour.of(c.layer(), v, c.curved()).orElse(c);
    }

    private void holes(Contour found, List<Contour> contours) {
        int outside = 0;
        int nested = 0;
        List<Contour> taken = new ArrayList<>();
        for (Contour c : contours) {
            if (c == found || c.area() > found.area() && c.box().covers(found.box())) {
                continue;
            }
            Geometry region = c.crossing().isEmpty() ? c.polygon() : c.polygon().convexHull();
            if (!floor.intersects(region) || floor.getGeometry().touches(region)) {
                outside++;
            } else if (taken.stream().anyMatch(t -> t.box().covers(c.box()) && t.polygon().convexHull().covers(region))) {
                nested++;
            } else if (c.area() > OTHER_OUTLINE * found.area()) {
                leftOut.add("a closed line of " + FloorReading.metres(c) + " on layer "
                        + FloorReading.shown(c.layer())
                        + " within the outline, too large for a hole; if it is the floor, name its layer");
            } else if (taken.size() < 4 * MOST) {
                taken.add(c);
                take(c, floor.covers(region));
            }
        }
        say(outside, "closed lines outside of the outline");
        say(nested, "closed lines within keep-outs");
    }

    private void say(int n, String what) {
        if (n > 0) {
            leftOut.add(n + " " + what);
        }
    }

    private void take(Contour c, boolean within) {
        if (c.layer().equalsIgnoreCase("UNHEATED") && c.crossing().isEmpty()) {
            unheated.add(moved(c));
            return;
        }
        String where = "layer " + FloorReading.shown(c.layer()) + (within ? "" : ", reaches over the outline");
        Optional<Arc> round = c.round();
        if (round.isPresent()) {
            double d = 2 * round.get().radius();
            String kind = d <= BOLT_DIAMETER ? "bolt" : d <= DRAIN_DIAMETER ? "drain" : "other";
            double clearance =
                    kind.equals("bolt") ? BOLT_CLEARANCE : kind.equals("drain") ? DRAIN_CLEARANCE : OTHER_CLEARANCE;
            String why = "circle of " + FloorReading.n(d) + " mm, " + where;
            obstacles.add(new Obstacle(
                    "", kind, moved(round.get().centre()), round.get().radius(), Optional.empty(), clearance, why));
        } else if (c.crossing().isEmpty()) {
            Contour moved = moved(c);
            Coordinate middle = moved.polygon().getCentroid().getCoordinate();
            obstacles.add(new Obstacle(
                    "",
                    "other",
                    new Point(middle.x, middle.y),
                    0,
                    Optional.of(moved),
                    OTHER_CLEARANCE,
                    "closed line, " + where));
        } else {
            leftOut.add("a closed line on layer " + FloorReading.shown(c.layer()) + " that crosses itself near "
                    + FloorReading.shown(moved(c.crossing().get())));
        }
    }

    private Point moved(Point p) {
        return p.plus(shift.x(), shift.y());
    }

    private void bolts(List<Figures.Spot> spots) {
        int outside = 0;
        for (Figures.Spot s : spots) {
            Point at = moved(s.at());
            boolean marksHole = obstacles.stream()
                    .anyMatch(o -> o.centre().distance(at) < Math.max(1, o.radius()) || o.contour().stream()
                            .anyMatch(c -> c.polygon().covers(point(at))));
            if (!floor.covers(point(s.at()))) {
                outside++;
            } else if (!marksHole) {
                obstacles.add(new Obstacle(
                        "",
                        "bolt",
                        at,
                        0,
                        Optional.empty(),
                        BOLT_CLEARANCE,
                        "point, layer " + FloorReading.shown(s.layer())));
            }
        }
        say(outside, "points outside of the outline");
    }

    private void limit() {
        if (obstacles.size() > MOST) {
            leftOut.add((obstacles.size() - MOST) + " of the smallest holes and bolts: a job file holds " + MOST);
            obstacles.subList(MOST, obstacles.size()).clear();
        }
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }

    private record Pair(double distance, int obstacle, int word) {}

    /** Nearest pairs of words and keep-outs find each other first; what is left stands at an edge or is told. */
    private void name(List<Figures.Words> words) {
        List<Pair> pairs = new ArrayList<>();
        for (int w = 0; w < Math.min(words.size(), 2000); w++) {
            for (int o = 0; o < obstacles.size(); o++) {
                double distance = distance(obstacles.get(o), moved(words.get(w).at()));
                if (distance <= Math.max(BESIDE, IN_HEIGHTS * words.get(w).height())) {
                    pairs.add(new Pair(distance, o, w));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::distance)
                .thenComparingInt(Pair::obstacle)
                .thenComparingInt(Pair::word));
        boolean[] named = new boolean[obstacles.size()];
        boolean[] spoken = new boolean[words.size()];
        for (Pair p : pairs) {
            if (!named[p.obstacle] && !spoken[p.word] && !isNumber(words.get(p.word).text())) {
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

    private void tell(Figures.Words words) {
        Point at = moved(words.at());
        int edge = nearestEdge(at);
        boolean beside = edge >= 0 && !isNumber(words.text()) && marks.size() < MOST_MARKS;
        if (beside) {
            marks.add(new FloorSketch.Mark(edge, at, words.text()));
        } else if (floor.covers(point(words.at())) && remarks.size() < MOST_MARKS) {
            remarks.add(new FloorSketch.Remark(at, words.text()));
        }
    }

    /** A dimension says nothing about what it stands beside. */
    private static boolean isNumber(String text) {
        return text.matches("[\\d.,'\"/x\u00d7\u00d8R+\u00b1 -]*(mm|cm|m|in|ft)?");
    }

    private static Optional<String> kind(String text) {
        String t = text.toLowerCase(Locale.ROOT);
        return List.of("vent", "drain", "bolt", "anchor", "pillar", "hatch").stream()
                .filter(k -> t.matches(".*\\b" + k + "s?\\b.*"))
                .findFirst();
    }

    private static double distance(Obstacle o, Point at) {
        return o.contour()
                .map(c -> c.polygon().distance(point(at)))
                .orElseGet(() -> Math.max(0, o.centre().distance(at) - o.radius()));
    }

    /** The entry of the outline whose side is nearest to a place, -1 if all are far. */
    private int nearestEdge(Point at) {
        int best = -1;
        double least = BESIDE_EDGE;
        for (int i = 0; i < outline.path().partCount(); i++) {
            Point a = outline.path().vertices().get(i).point();
            Point b = outline.path().end(i);
            double d = new org.locationtech.jts.geom.LineSegment(a.x(), a.y(), b.x(), b.y())
                    .distance(new Coordinate(at.x(), at.y()));
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }

    private void numberNameless() {
        int n = 0;
        for (int i = 0; i < obstacles.size(); i++) {
            Obstacle o = obstacles.get(i);
            if (o.name().isEmpty()) {
                String word = o.contour().isPresent() ? "keep-out" : o.kind().equals("bolt") ? "bolt" : "hole";
                obstacles.set(i, o.named(word + " " + ++n, o.kind()));
            }
        }
    }
}
