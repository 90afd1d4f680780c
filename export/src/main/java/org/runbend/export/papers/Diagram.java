package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/** Curves over two axes that begin at round numbers, drawn in a box of 150 x 60. */
final class Diagram {
    private static final double WIDE = 150;
    private static final double HIGH = 60;
    private static final double LETTERS = 2.6;
    private static final double TICK = 1.2;
    private static final double[] ROUND = {1, 2, 5, 10};
    private static final int MOST_TICKS = 7;

    /** Of the names of two curves: tails of letters and what rises from the next line do not touch. */
    private static final double APART = LETTERS * 1.8;
    /** Between a point and its words. */
    private static final double BESIDE = 4;
    /** Curves are looked at in steps of this. */
    private static final double LOOK = 0.5;

    private final List<Point> names = new ArrayList<>();
    /** What no words may lie on: curves, and the middle lines of their names. */
    private final List<List<Point>> curves = new ArrayList<>();

    private final SheetBuilder sheet;
    private final Axis across;
    private final Axis up;

    /** What an axis shows. */
    record Axis(String words, double from, double to, double step) {
        /** An axis over values, with round steps. */
        static Axis over(String words, double least, double most) {
            double span = Math.max(1e-9, most - least);
            double power = Math.pow(10, Math.floor(Math.log10(span / MOST_TICKS)));
            double step = power * 10;
            for (int i = ROUND.length - 1; i >= 0; i--) {
                step = span / (ROUND[i] * power) <= MOST_TICKS ? ROUND[i] * power : step;
            }
            return new Axis(words, Math.floor(least / step) * step, Math.ceil(most / step - 1e-9) * step, step);
        }

        double share(double value) {
            return (value - from) / (to - from);
        }

        int ticks() {
            return (int) Math.round((to - from) / step);
        }
    }

    Diagram(String title, Axis across, Axis up) {
        sheet = new SheetBuilder(title);
        this.across = across;
        this.up = up;
        frame();
    }

    private void frame() {
        line(new Point(0, 0), new Point(WIDE, 0));
        line(new Point(0, 0), new Point(0, HIGH));
        for (int i = 0; i <= across.ticks(); i++) {
            double value = across.from() + i * across.step();
            double x = across.share(value) * WIDE;
            line(new Point(x, 0), new Point(x, -TICK));
            words(new Point(x, -2 * TICK), Anchor.TOP_CENTRE, Decimals.of(value, 2));
        }
        for (int i = 0; i <= up.ticks(); i++) {
            double value = up.from() + i * up.step();
            double y = up.share(value) * HIGH;
            line(new Point(0, y), new Point(-TICK, y));
            words(new Point(-2 * TICK, y), Anchor.MIDDLE_RIGHT, Decimals.of(value, 2));
        }
        words(new Point(WIDE, -4 * TICK - LETTERS), Anchor.TOP_RIGHT, across.words());
        words(new Point(0, HIGH + TICK), Anchor.BOTTOM_LEFT, up.words());
    }

    /** A curve with its name at its end. */
    Diagram curve(Layer layer, String name, List<Point> values) {
        List<Point> points = new ArrayList<>();
        for (Point v : values) {
            points.add(place(v));
        }
        if (points.size() >= 2) {
            curves.add(points);
            sheet.add(layer, Path.polyline(points));
            Point at = free(points.get(points.size() - 1).plus(1.5, 0));
            curves.add(List.of(at, at.plus(Text.roughWidth(name, LETTERS), 0)));
            sheet.add(layer, Text.level(at, LETTERS, Anchor.MIDDLE_LEFT, name));
        }
        return this;
    }

    /** The next place downwards where no other curve's name stands. */
    private Point free(Point wanted) {
        Point at = wanted;
        for (int i = 0; i <= 2 * names.size(); i++) {
            Point tried = at;
            if (names.stream().noneMatch(n -> n.distance(tried) < APART)) {
                break;
            }
            at = at.plus(0, -APART / 2);
        }
        names.add(at);
        return at;
    }

    /** A point with words, beside it where no curve runs through them. */
    Diagram point(Point value, String name) {
        Point at = place(value);
        sheet.add(Layer.KEEP_OUT, new Circle(at, 1.2));
        Text right = besides(at, name, BESIDE, Anchor.MIDDLE_LEFT, 0.4);
        Text clear = right;
        for (int i = 0; i <= 2 * HIGH && !isClear(clear); i++) {
            double rise = (i % 4 < 2 ? -1 : 1) * (1 + i / 4) * LOOK * 2;
            clear = i % 2 == 0
                    ? besides(at, name, BESIDE, Anchor.MIDDLE_LEFT, rise)
                    : besides(at, name, -BESIDE, Anchor.MIDDLE_RIGHT, rise);
        }
        Text words = isClear(clear) ? clear : right;
        if (Math.abs(words.at().y() - at.y()) > BESIDE) {
            line(at, words.at().plus(-Math.signum(words.at().x() - at.x()), 0));
        }
        sheet.add(Layer.TITLE, words);
        return this;
    }

    private static Text besides(Point at, String name, double across, Anchor anchor, double rise) {
        return Text.level(at.plus(across, rise), LETTERS, anchor, name);
    }

    /** Whether words stand within the axes, and a letter's half away from every curve. */
    private boolean isClear(Text words) {
        Extent box = words.extent();
        double away = LETTERS / 2;
        if (box.minX() < away || box.maxX() > WIDE || box.minY() < away || box.maxY() > HIGH) {
            return false;
        }
        return curves.stream().noneMatch(c -> isCrossed(box, away, c));
    }

    private static boolean isCrossed(Extent box, double away, List<Point> curve) {
        for (int i = 1; i < curve.size(); i++) {
            Point a = curve.get(i - 1);
            Point b = curve.get(i);
            int steps = (int) Math.ceil(a.distance(b) / LOOK);
            for (int k = 0; k <= steps; k++) {
                double share = steps == 0 ? 0 : (double) k / steps;
                double x = a.x() + share * (b.x() - a.x());
                double y = a.y() + share * (b.y() - a.y());
                if (x > box.minX() - away && x < box.maxX() + away && y > box.minY() - away && y < box.maxY() + away) {
                    return true;
                }
            }
        }
        return false;
    }

    Sheet sheet() {
        return sheet.build();
    }

    private Point place(Point value) {
        return new Point(across.share(value.x()) * WIDE, up.share(value.y()) * HIGH);
    }

    private void line(Point a, Point b) {
        sheet.add(Layer.DIMENSION, new Segment(a, b));
    }

    private void words(Point at, Anchor anchor, String text) {
        sheet.add(Layer.TITLE, new Text(at, LETTERS, 0, anchor, text));
    }
}
