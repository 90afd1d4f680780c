package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.DxfVertex;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfEntity;

/** The entities of a drawing in mm, sorted by what they can be: closed, open, points, words. */
final class Figures {
    /** Layers of our own drawings that are no part of the floor. */
    private static final Set<String> OWN =
            Set.of("PIPE", "CHANNEL", "PLATE", "BOARD", "SENSOR", "SCREW", "DIMENSION", "NOTE", "TITLE");

    /** Flatter arcs are lines, and rounder ones are circles through a single point, which nobody draws. */
    private static final double LEAST_BULGE = 1e-9;

    private static final double MOST_BULGE = 1e4;

    final List<Contour> contours = new ArrayList<>();
    final List<DxfEntity.Circle> circles = new ArrayList<>();
    final List<Piece> pieces = new ArrayList<>();
    final List<Spot> spots = new ArrayList<>();
    final List<Words> words = new ArrayList<>();
    final TreeMap<String, Integer> own = new TreeMap<>();
    final TreeSet<String> layers = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    /** Whether it is a drawing of Runbend's own, by its layers. */
    final boolean ours;

    private final double mm;

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

    Figures(DxfDrawing drawing, double mm) {
        this.mm = mm;
        drawing.entities().forEach(e -> layers.add(e.layer()));
        ours = layers.contains("FLOOR")
                && layers.contains("PIPE")
                && (layers.contains("CHANNEL") || layers.contains("PLATE"));
        for (DxfEntity e : drawing.entities()) {
            boolean words = e instanceof DxfEntity.Text && e.layer().equals("NOTE");
            if (ours && !words && OWN.contains(e.layer().toUpperCase(Locale.ROOT))) {
                own.merge(e.layer(), 1, Integer::sum);
            } else {
                add(e);
            }
        }
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
            line(c.layer(), c.chords(), c.closed(), true);
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
