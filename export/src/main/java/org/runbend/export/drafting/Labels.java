package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/**
 * Puts short texts where they cover neither each other nor pipe, plates and things: the first such place is taken. Where
 * there is none beside its thing, a text goes to the nearest free place and a thin line leads back.
 */
final class Labels {
    /** Air round a text by its height: numbers that nearly touch are read as one. */
    private static final double AIR = 0.3;

    /** Between the places that are looked at farther off, by the height of the text. */
    private static final double STEP = 1.6;

    private static final int STEPS = 26;
    private static final int DIRECTIONS = 48;
    private static final int PARTS_OF_ARC = 8;

    private final SheetBuilder sheet;
    private final List<Area> used = new ArrayList<>();
    private final List<Area> texts = new ArrayList<>();
    private final List<Area> shy = new ArrayList<>();
    private final List<Area> plates = new ArrayList<>();
    private final List<Point> heads = new ArrayList<>();
    private Optional<Extent> page = Optional.empty();

    Labels(SheetBuilder sheet) {
        this.sheet = sheet;
    }

    /** A convex area, as its corners in order, and the box round it. */
    private record Area(List<Point> corners, Extent box) {
        static Area of(List<Point> corners) {
            return new Area(corners, Extent.around(corners));
        }

        static Area of(Extent e) {
            return of(List.of(
                    new Point(e.minX(), e.minY()),
                    new Point(e.maxX(), e.minY()),
                    new Point(e.maxX(), e.maxY()),
                    new Point(e.minX(), e.maxY())));
        }

        /** The letters of a text with air round them. */
        static Area of(Text text) {
            double h = text.height();
            double width = Text.roughWidth(text.string(), h);
            Point start = text.baselineStart(width).polar(-AIR * h, text.angle());
            Point low = start.polar(-AIR * h, text.angle() + 90);
            Point high = start.polar((1 + AIR) * h, text.angle() + 90);
            double length = width + 2 * AIR * h;
            return of(List.of(low, low.polar(length, text.angle()), high.polar(length, text.angle()), high));
        }

        boolean meets(Area other) {
            boolean near = box.minX() < other.box.maxX()
                    && other.box.minX() < box.maxX()
                    && box.minY() < other.box.maxY()
                    && other.box.minY() < box.maxY();
            return near && !apart(corners, other.corners) && !apart(other.corners, corners);
        }

        /** Whether a line along a side of the first parts both. */
        private static boolean apart(List<Point> a, List<Point> b) {
            for (int i = 0; i < a.size(); i++) {
                Point from = a.get(i);
                Point to = a.get((i + 1) % a.size());
                double nx = from.y() - to.y();
                double ny = to.x() - from.x();
                double[] first = range(a, nx, ny);
                double[] second = range(b, nx, ny);
                if (first[1] <= second[0] || second[1] <= first[0]) {
                    return true;
                }
            }
            return false;
        }

        private static double[] range(List<Point> points, double nx, double ny) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Point p : points) {
                double v = nx * p.x() + ny * p.y();
                least = Math.min(least, v);
                most = Math.max(most, v);
            }
            return new double[] {least, most};
        }
    }

    /** Texts stay in this box where they can. */
    void keepIn(Extent box) {
        page = Optional.of(box);
    }

    /** Keeps a place free of texts. */
    void block(Extent place) {
        used.add(Area.of(place));
    }

    /** Keeps a text that another hand writes free of others. */
    void block(Text text) {
        used.add(Area.of(text));
    }

    /** Keeps a place free of texts that have another one. */
    void shun(Extent place) {
        shy.add(Area.of(place));
    }

    /** Keeps a plate free of texts that have another place; its own number may stand on it. */
    void shunArea(List<Point> corners) {
        plates.add(Area.of(corners));
    }

    /** Keeps a line free of texts that have another place. */
    void shun(Shape line) {
        if (line instanceof Segment s) {
            shy.add(Area.of(List.of(s.a(), s.b())));
        } else if (line instanceof Arc arc) {
            shunArc(arc);
        } else if (line instanceof Circle c) {
            shunArc(new Arc(c.centre(), c.radius(), 0, 180));
            shunArc(new Arc(c.centre(), c.radius(), 180, 180));
        } else if (line instanceof Path path) {
            path.parts().forEach(this::shun);
        } else if (line instanceof Dimension d) {
            d.parts().forEach(this::shun);
        } else if (line instanceof Text t) {
            block(t);
        } else {
            shun(line.extent());
        }
    }

    private void shunArc(Arc arc) {
        Point from = arc.start();
        for (int i = 1; i <= PARTS_OF_ARC; i++) {
            Point to = arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / PARTS_OF_ARC);
            shy.add(Area.of(List.of(from, to)));
            from = to;
        }
    }

    /** Writes the text at the best of the places; a line leads back to the middle of them from farther off. */
    void put(List<Text> places) {
        Text first = places.get(0);
        Area at = Area.of(first);
        put(places, at.box().centre());
    }

    /** Writes the text at the first place free of texts, pipe and things, plates may lie there; or farther off. */
    void putOn(List<Text> places, Point thing) {
        places.stream()
                .filter(t -> isFree(Area.of(t), used) && isFree(Area.of(t), shy))
                .findFirst()
                .ifPresentOrElse(this::write, () -> put(places, thing));
    }

    /** Likewise, but on a plate only where no place is free of plates too. */
    void putBeside(List<Text> places, Point thing) {
        places.stream()
                .filter(t -> isFree(Area.of(t)))
                .findFirst()
                .ifPresentOrElse(this::write, () -> putOn(places, thing));
    }

    /** Lines that lead to other things keep off this one. */
    void keepLeadersOff(Point thing) {
        heads.add(thing);
    }

    /** Writes the text at the first free place, or at one farther off, from where a line leads to the thing. */
    void put(List<Text> places, Point thing) {
        put(places, List.of(thing));
    }

    /** Likewise for a thing that a line may lead to at several points, the best of them first. */
    void put(List<Text> places, List<Point> thing) {
        Optional<Text> near = places.stream().filter(t -> isFree(Area.of(t))).findFirst();
        if (near.isPresent()) {
            write(near.get());
            return;
        }
        Text like = places.get(0);
        // a line that crosses nothing, else one that crosses no text, else one that crosses what it must
        List<Predicate<Segment>> wishes =
                List.of(s -> isClear(s, like.height()), s -> crossesNone(s, texts), s -> true);
        for (Predicate<Segment> wish : wishes) {
            for (Point end : thing) {
                Optional<Text> far = farther(like, end, t -> isFree(Area.of(t)) && wish.test(leader(t, end)));
                if (far.isPresent()) {
                    lead(far.get(), end);
                    write(far.get());
                    return;
                }
            }
        }
        Point end = thing.get(0);
        // on a plate rather than on pipe, on anything rather than on another text
        write(places.stream()
                .filter(t -> isFree(Area.of(t), used))
                .findFirst()
                .or(() -> farther(like, end, t -> isFree(Area.of(t), used)))
                .orElse(like));
    }

    private Optional<Text> farther(Text like, Point thing, Predicate<Text> isGood) {
        double h = like.height();
        for (int step = 1; step <= STEPS; step++) {
            for (int k = 0; k < DIRECTIONS; k++) {
                int turn = k % 2 == 0 ? k : -k - 1;
                double direction = 45 + turn * 180.0 / DIRECTIONS;
                Point at = thing.polar((1 + step * STEP) * h, direction);
                double across = Math.cos(Math.toRadians(direction));
                Anchor anchor = across > 0.3
                        ? Anchor.MIDDLE_LEFT
                        : across < -0.3
                                ? Anchor.MIDDLE_RIGHT
                                : Math.sin(Math.toRadians(direction)) > 0 ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
                Text text = Text.level(at, h, anchor, like.string());
                if (isOnPage(text) && isGood.test(text)) {
                    return Optional.of(text);
                }
            }
        }
        return Optional.empty();
    }

    private boolean isOnPage(Text text) {
        Extent e = text.extent();
        return page.map(p ->
                        e.minX() >= p.minX() && e.maxX() <= p.maxX() && e.minY() >= p.minY() && e.maxY() <= p.maxY())
                .orElse(true);
    }

    private static Segment leader(Text text, Point thing) {
        return new Segment(text.at().polar(AIR * text.height(), text.at().angleTo(thing)), thing);
    }

    /** Whether a line that leads to a thing crosses no text or other such line and passes no other thing closely. */
    private boolean isClear(Segment line, double near) {
        return heads.stream().allMatch(h -> h.distance(line.b()) < 1e-6 || distance(h, line) > near)
                && crossesNone(line, used);
    }

    private static boolean crossesNone(Segment line, List<Area> areas) {
        Area area = Area.of(List.of(line.a(), line.b()));
        return areas.stream().noneMatch(area::meets);
    }

    private static double distance(Point p, Segment s) {
        double length = s.a().distance(s.b());
        double ux = (s.b().x() - s.a().x()) / length;
        double uy = (s.b().y() - s.a().y()) / length;
        double t = Math.max(0, Math.min(length, (p.x() - s.a().x()) * ux + (p.y() - s.a().y()) * uy));
        return p.distance(s.a().plus(t * ux, t * uy));
    }

    /** A thin line from the thing to the text, which other texts leave free. */
    private void lead(Text text, Point thing) {
        double gap = AIR * text.height();
        if (text.at().distance(thing) > 2 * gap) {
            Segment line = leader(text, thing);
            sheet.add(Layer.NOTE, line);
            used.add(Area.of(List.of(line.a(), line.b())));
        }
    }

    private void write(Text text) {
        used.add(Area.of(text));
        texts.add(Area.of(text));
        sheet.add(Layer.NOTE, text);
    }

    private boolean isFree(Area area) {
        return isFree(area, used) && isFree(area, shy) && isFree(area, plates);
    }

    private static boolean isFree(Area area, List<Area> taken) {
        return taken.stream().noneMatch(area::meets);
    }

    /** A text in the middle of something, or over, under, right or left of it. */
    static List<Text> around(Extent box, double gap, double height, String string) {
        Point c = box.centre();
        return List.of(
                Text.level(c, height, Anchor.MIDDLE_CENTRE, string),
                Text.level(new Point(c.x(), box.maxY() + gap), height, Anchor.BOTTOM_CENTRE, string),
                Text.level(new Point(c.x(), box.minY() - gap), height, Anchor.TOP_CENTRE, string),
                Text.level(new Point(box.maxX() + gap, c.y()), height, Anchor.MIDDLE_LEFT, string),
                Text.level(new Point(box.minX() - gap, c.y()), height, Anchor.MIDDLE_RIGHT, string));
    }
}
