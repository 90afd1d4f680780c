package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.DxfVertex;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfEntity;

/** The entities of a drawing in mm, sorted by what they can be: closed, open, points, words. */
final class DrawnShapes {
    /** Layers of our own drawings that are no part of the floor. */
    private static final Set<String> OWN = Set.of(
            "PIPE", "CHANNEL", "HOLE", "SLOT", "PLATE", "BOARD", "SENSOR", "SCREW", "DIMENSION", "NOTE", "TITLE");

    /** Words that our drawings have on every floor: numbers of runs, ends of loops, wishes, the legend. */
    private static final Pattern OWN_WORDS = Pattern.compile(
            "[A-F]?\\d+|[A-F] (flow|return)|no bend|no pipe|kept|pipe port|sensor|x|y|0, 0|[CP]\\d+([a-z]|-\\d+)?|(?s).*(FLOOR|CHANNEL|KEEP_OUT|PIPE|PLATE|DIMENSION|NOTE)\\b.*");

    /** Flatter arcs are lines, and rounder ones are circles through a single point, which nobody draws. */
    private static final double LEAST_BULGE = 1e-9;

    private static final double MOST_BULGE = 1e4;
    /** Within this a spline is an arc if nobody says otherwise, and edges of hatches meet, mm. */
    private static final double ARC = 0.5;

    final List<Contour> contours = new ArrayList<>();
    final List<DxfEntity.Circle> circles = new ArrayList<>();
    final List<Piece> pieces = new ArrayList<>();
    final List<Spot> spots = new ArrayList<>();
    final List<Words> words = new ArrayList<>();
    final TreeMap<String, Integer> hatches = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    final List<Bends.Found> bends = new ArrayList<>();
    /** Kinds of curves that are no arcs. */
    final TreeSet<String> curves = new TreeSet<>();

    private final List<Contour> hatched = new ArrayList<>();
    final TreeMap<String, Integer> own = new TreeMap<>();
    final TreeSet<String> layers = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    /** Whether it is a drawing of Runbend's own, by its layers. */
    final boolean ours;

    private final double mm;
    private final double tolerance;
    private final Predicate<String> wantsHatch;

    /** A point. */
    record Spot(String layer, Point at) {}

    /** Words and about where they stand: from the left to the right end, half way up. */
    record Words(Point left, Point right, double height, String text) {
        Point middle() {
            return new Point((left.x() + right.x()) / 2, (left.y() + right.y()) / 2);
        }

        Words moved(Point by) {
            return new Words(left.plus(by.x(), by.y()), right.plus(by.x(), by.y()), height, text);
        }
    }

    /** Everything in mm; hatches are left out. */
    DrawnShapes(DxfDrawing drawing, double mm) {
        this(drawing, mm, ARC, layer -> false);
    }

    /**
     * Everything in mm.
     *
     * @param tolerance within which a curve is the arc that it stands for, mm
     * @param wantsHatch layers whose hatches are regions
     */
    DrawnShapes(DxfDrawing drawing, double mm, double tolerance, Predicate<String> wantsHatch) {
        this.mm = mm;
        this.tolerance = tolerance;
        this.wantsHatch = wantsHatch;
        drawing.entities().forEach(e -> layers.add(e.layer()));
        ours = layers.contains("FLOOR")
                && layers.contains("PIPE")
                && (layers.contains("CHANNEL") || layers.contains("PLATE"));
        for (DxfEntity e : drawing.entities()) {
            boolean words = e instanceof DxfEntity.Text t
                    && e.layer().equals("NOTE")
                    && !OWN_WORDS.matcher(t.content()).matches();
            if (ours && !words && OWN.contains(e.layer().toUpperCase(Locale.ROOT))) {
                own.merge(e.layer(), 1, Integer::sum);
            } else {
                add(e);
            }
        }
    }

    /** Whether our own drawings have a layer of this name. */
    static boolean isOwnLayer(String layer) {
        String name = layer.toUpperCase(Locale.ROOT);
        return OWN.contains(name) || name.equals("FLOOR") || name.equals("KEEP_OUT") || name.equals("UNHEATED");
    }

    /** The parts of one edge of a hatch. */
    private DrawnShapes(List<DxfEntity> edge, double mm, double tolerance) {
        this.mm = mm;
        this.tolerance = tolerance;
        wantsHatch = layer -> false;
        ours = false;
        edge.forEach(this::add);
    }

    /** Lines and arcs in mm as pieces. */
    static List<Piece> pieces(List<DxfEntity> entities) {
        return new DrawnShapes(entities, 1, ARC).pieces;
    }

    /** Hatched regions of the layers wanted. */
    List<Contour> hatched() {
        return hatched;
    }

    /** The largest closed line that the edges of a hatch make. */
    private void hatch(DxfEntity.Area area) {
        if (!wantsHatch.test(area.layer())) {
            hatches.merge(area.layer(), 1, Integer::sum);
            return;
        }
        List<Contour> edges = new ArrayList<>();
        for (List<DxfEntity> edge : area.edges()) {
            DrawnShapes parts = new DrawnShapes(edge, mm, tolerance);
            edges.addAll(ClosedLines.of(parts, ARC).contours());
        }
        Optional<Contour> largest = edges.stream().max(Comparator.comparingDouble(Contour::area));
        largest.ifPresentOrElse(hatched::add, () -> hatches.merge(area.layer(), 1, Integer::sum));
    }

    private void add(DxfEntity e) {
        if (e instanceof DxfEntity.Line l) {
            pieces.add(new Piece(l.layer(), List.of(vertex(l.x1(), l.y1(), 0), vertex(l.x2(), l.y2(), 0)), false));
        } else if (e instanceof DxfEntity.Arc a) {
            pieces.add(arc(a));
        } else if (e instanceof DxfEntity.Circle c) {
            circle(c);
        } else if (e instanceof DxfEntity.Polyline p) {
            line(p.layer(), p.vertices(), p.closed(), false);
        } else if (e instanceof DxfEntity.Curve c) {
            curve(c);
        } else if (e instanceof DxfEntity.Area a) {
            hatch(a);
        } else if (e instanceof DxfEntity.Spot s) {
            spots.add(new Spot(s.layer(), point(s.x(), s.y())));
        } else if (e instanceof DxfEntity.Text t) {
            text(t);
        }
    }

    /** A circle too small to be seen is a point. */
    private void circle(DxfEntity.Circle c) {
        if (c.radius() * mm < Contour.SAME) {
            spots.add(new Spot(c.layer(), point(c.x(), c.y())));
        } else {
            circles.add(new DxfEntity.Circle(c.layer(), c.x() * mm, c.y() * mm, c.radius() * mm));
        }
    }

    /** An arc in parts of at most a half circle. */
    private Piece arc(DxfEntity.Arc a) {
        int n = a.sweep() > 180 ? 2 : 1;
        double bulge = StrictMath.tan(Math.toRadians(a.sweep() / n) / 4);
        Point centre = point(a.x(), a.y());
        List<Vertex> vertices = new ArrayList<>();
        for (int i = 0; i <= n; i++) {
            Point p = centre.polar(a.radius() * mm, a.start() + a.sweep() * i / n);
            vertices.add(new Vertex(p.x(), p.y(), i < n ? bulge : 0));
        }
        return new Piece(a.layer(), vertices, false);
    }

    /** A spline that is an arc within the tolerance is one. */
    private void curve(DxfEntity.Curve c) {
        List<Vertex> chords =
                c.chords().stream().map(v -> vertex(v.x(), v.y(), v.bulge())).toList();
        Optional<Bends.Found> arc =
                c.kind().equals("SPLINE") ? Bends.whole(chords, c.closed(), tolerance) : Optional.empty();
        if (arc.isEmpty()) {
            curves.add(c.kind());
            line(c.layer(), c.chords(), c.closed(), true);
            return;
        }
        bends.add(arc.get());
        if (c.closed()) {
            Contour.of(c.layer(), arc.get().vertices(), false).ifPresent(contours::add);
        } else {
            pieces.add(new Piece(c.layer(), arc.get().vertices(), false));
        }
    }

    private void line(String layer, List<DxfVertex> drawn, boolean closed, boolean curved) {
        List<Vertex> vertices =
                drawn.stream().map(v -> vertex(v.x(), v.y(), v.bulge())).toList();
        if (closed) {
            Contour.of(layer, vertices, curved).ifPresent(contours::add);
        } else {
            pieces.add(new Piece(layer, vertices, curved));
        }
    }

    private void text(DxfEntity.Text t) {
        String line = t.content().replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}\\s]+", " ").strip();
        if (line.isEmpty()) {
            return;
        }
        double height = Math.max(0, t.height() * mm);
        double width = 0.85
                * height
                * t.content().lines().mapToInt(String::length).max().orElse(0);
        Point left = point(t.x(), t.y())
                .polar(-t.column() * width / 2, t.angle())
                .polar((1 - t.row()) * height / 2, t.angle() + 90);
        words.add(new Words(left, left.polar(width, t.angle()), height, line));
    }

    private Vertex vertex(double x, double y, double bulge) {
        double size = Math.abs(bulge);
        return new Vertex(x * mm, y * mm, size > LEAST_BULGE && size < MOST_BULGE ? bulge : 0);
    }

    private Point point(double x, double y) {
        return new Point(x * mm, y * mm);
    }
}
