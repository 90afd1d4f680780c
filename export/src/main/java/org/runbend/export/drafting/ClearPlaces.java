package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/**
 * Puts texts where they cover neither each other nor anything that was kept free. Turned texts are taken as the turned boxes
 * they are: two convex shapes are apart if a line along a side of one of them parts them.
 */
final class ClearPlaces {
    private static final double BELOW = 0.35;
    private static final double BESIDE = 0.25;

    private final SheetBuilder sheet;
    private final List<Area> taken = new ArrayList<>();
    private final List<Area> shy = new ArrayList<>();

    /** A convex shape with the upright box around it: most are told apart by their boxes. */
    private record Area(List<Point> corners, Extent box) {
        static Area of(List<Point> corners) {
            return new Area(corners, Extent.around(corners));
        }

        boolean isApart(Area other) {
            Extent b = other.box;
            return box.maxX() <= b.minX()
                    || b.maxX() <= box.minX()
                    || box.maxY() <= b.minY()
                    || b.maxY() <= box.minY()
                    || apart(corners, other.corners)
                    || apart(other.corners, corners);
        }
    }

    /** How far points reach along a direction. */
    private record Spread(double least, double most) {
        static Spread of(List<Point> points, double nx, double ny) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Point v : points) {
                double at = nx * v.x() + ny * v.y();
                least = Math.min(least, at);
                most = Math.max(most, at);
            }
            return new Spread(least, most);
        }
    }

    ClearPlaces(SheetBuilder sheet) {
        this.sheet = sheet;
    }

    /** Keeps a box free. */
    void block(Extent box) {
        taken.add(Area.of(List.of(
                new Point(box.minX(), box.minY()),
                new Point(box.maxX(), box.minY()),
                new Point(box.maxX(), box.maxY()),
                new Point(box.minX(), box.maxY()))));
    }

    /** Keeps a line free. */
    void block(Point a, Point b) {
        taken.add(Area.of(List.of(a, b)));
    }

    /** Keeps a line free of texts that have another place. */
    void shun(Point a, Point b) {
        shy.add(Area.of(List.of(a, b)));
    }

    /** Keeps the place of a text that is drawn by another hand free. */
    void block(Text text) {
        taken.add(Area.of(box(text)));
    }

    /** Writes the text at the first of the places that is clear; empty if none is, and nothing is written. */
    Optional<Text> put(Layer layer, List<Text> places) {
        List<Text> clear = places.stream().filter(t -> isClear(t, taken)).toList();
        Optional<Text> chosen = clear.stream()
                .filter(t -> isClear(t, shy))
                .findFirst()
                .or(() -> clear.stream().findFirst());
        chosen.ifPresent(text -> {
            taken.add(Area.of(box(text)));
            sheet.add(layer, text);
        });
        return chosen;
    }

    private static boolean isClear(Text text, List<Area> taken) {
        Area box = Area.of(box(text));
        for (Area area : taken) {
            if (!box.isApart(area)) {
                return false;
            }
        }
        return true;
    }

    /** The letters with their descenders and a little air. */
    private static List<Point> box(Text text) {
        double h = text.height();
        double width = Text.roughWidth(text.string(), h);
        Point start = text.baselineStart(width).polar(-BESIDE * h, text.angle());
        Point low = start.polar(-BELOW * h, text.angle() + 90);
        Point high = start.polar((1 + BESIDE) * h, text.angle() + 90);
        double across = width + 2 * BESIDE * h;
        return List.of(low, low.polar(across, text.angle()), high.polar(across, text.angle()), high);
    }

    private static boolean apart(List<Point> a, List<Point> b) {
        for (int i = 0; i < a.size(); i++) {
            Point p = a.get(i);
            Point q = a.get((i + 1) % a.size());
            double nx = q.y() - p.y();
            double ny = p.x() - q.x();
            Spread own = Spread.of(a, nx, ny);
            Spread other = Spread.of(b, nx, ny);
            if (other.least() >= own.most() || other.most() <= own.least()) {
                return true;
            }
        }
        return false;
    }
}
