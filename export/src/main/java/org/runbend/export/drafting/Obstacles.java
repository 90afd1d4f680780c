package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.KeepOut;

/** What texts and the lines that lead to them keep off: texts for good, the rest where they have another place. */
class Obstacles {
    /** A line that is this near to the way of a text, as a cosine, runs through it. */
    private static final double LENGTHWISE = 0.7;

    /** Air round a text by its height: numbers that nearly touch are read as one. */
    static final double AIR = 0.3;

    /** A leader passes a thing beside its own one by so much of the distance between the two, if that is less than a letter. */
    private static final double ASIDE = 0.6;

    private static final int PARTS_OF_ARC = 8;
    /** How far they overlap, as a share of their length. */
    private static final double LAP = 0.02;

    /** Of a leader that ends on pipe, as a share of the height of letters: so much of it may lie on that. */
    private static final double TIP = 0.4;

    private final List<Area> used = new ArrayList<>();
    private final List<Area> texts = new ArrayList<>();
    private final List<Area> shy = new ArrayList<>();
    private final List<Area> plates = new ArrayList<>();
    private final List<Segment> thin = new ArrayList<>();
    private final List<Area> fences = new ArrayList<>();
    private final List<Point> heads = new ArrayList<>();
    private final List<Point> named = new ArrayList<>();

    /** A thin line that texts may stand across where they have no other place; see {@link #parted}. */
    void bridge(Segment line) {
        thin.add(line);
    }

    /** Pipe: a piece of a line or an arc that leaders cross only where they must. */
    void fence(Shape pipe) {
        if (pipe instanceof Arc arc) {
            fences.addAll(chords(arc));
        } else if (pipe instanceof Segment s) {
            fences.add(line(s));
        }
    }

    /** What is left of a thin line beside the texts that stand across it. */
    List<Segment> parted(Segment line) {
        return parted(line, texts);
    }

    /** What is left of a line beside areas that stand across it. */
    static List<Segment> parted(Segment line, List<Area> texts) {
        List<double[]> gaps = texts.stream()
                .map(t -> t.partOf(line))
                .filter(g -> g[0] < g[1])
                .sorted(Comparator.comparingDouble(g -> g[0]))
                .toList();
        List<Segment> parts = new ArrayList<>();
        double at = 0;
        for (double[] gap : gaps) {
            if (gap[0] > at) {
                parts.add(part(line, at, gap[0]));
            }
            at = Math.max(at, gap[1]);
        }
        if (at < 1) {
            parts.add(part(line, at, 1));
        }
        return parts;
    }

    private static Segment part(Segment line, double from, double to) {
        return new Segment(Places.between(line.a(), line.b(), from), Places.between(line.a(), line.b(), to));
    }

    /** Keeps a place free of texts. */
    void block(Extent place) {
        used.add(Area.of(place));
    }

    /** Keeps a text free of others. */
    void block(Text text) {
        used.add(Area.of(text));
        texts.add(Area.of(text));
    }

    /** Keeps a line that leads to a text free of texts. */
    void block(Segment leader) {
        used.add(line(leader));
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
            shy.add(line(s));
        } else if (line instanceof Arc arc) {
            shy.addAll(chords(arc));
        } else if (line instanceof Circle c) {
            shy.addAll(chords(new Arc(c.centre(), c.radius(), 0, 180)));
            shy.addAll(chords(new Arc(c.centre(), c.radius(), 180, 180)));
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

    /** Keeps a thing and its clearance free of texts and leaders that have another place. */
    void shunThing(KeepOut thing) {
        List<Point> ring = FloorShapes.ring(thing);
        Path edge = Path.polygon(ring);
        shun(edge);
        if (!(thing.bare() instanceof org.runbend.optimizer.job.Shape.Polygon)) {
            shy.add(Area.of(ring));
        } else {
            shun(FloorShapes.bare(thing));
        }
        edge.parts().forEach(this::fence);
    }

    /** Lines that lead to other things keep off this one. */
    void keepLeadersOff(Point thing) {
        heads.add(thing);
    }

    /** A thing that has a name: other names are not to stand nearer to it than to their own. */
    void keepNamesOff(Point thing) {
        named.add(thing);
    }

    /** Whether a point is that of a thing that has a name. */
    boolean isNamed(Point thing) {
        return named.stream().anyMatch(p -> p.distance(thing) < 1e-3);
    }

    /** Whether no other thing that has a name is nearer to a text than its own. */
    boolean isNearestToItsOwn(Text text, Point own) {
        Area area = Area.of(text);
        return named.stream().filter(p -> p.distance(own) >= 1e-3).noneMatch(p -> area.away(p) < area.away(own));
    }

    private static Area line(Segment s) {
        return Area.of(List.of(s.a(), s.b()));
    }

    private static List<Area> chords(Arc arc) {
        List<Area> chords = new ArrayList<>();
        Point from = arc.start();
        for (int i = 1; i <= PARTS_OF_ARC; i++) {
            Point to = arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / PARTS_OF_ARC);
            // they overlap, so that no line slips through where two meet
            chords.add(Area.of(List.of(Places.between(from, to, -LAP), Places.between(from, to, 1 + LAP))));
            from = to;
        }
        return chords;
    }

    /** Whether a text covers no other. */
    boolean isOffTexts(Text text) {
        return isFree(Area.of(text), used);
    }

    /** Whether it covers neither another nor pipe and things. */
    boolean isOffPipe(Text text) {
        return isOffTexts(text) && isFree(Area.of(text), shy);
    }

    /** Whether it covers no plate either. */
    boolean isFree(Text text) {
        return isOffPipe(text) && isFree(Area.of(text), plates);
    }

    /** Whether it covers no thin line. */
    boolean isOffLines(Text text) {
        Area area = Area.of(text);
        return thin.stream().noneMatch(s -> area.meets(line(s)));
    }

    /** Whether no thin line runs through a text the way it is read. */
    boolean isAcrossLines(Text text) {
        Area area = Area.of(text);
        return thin.stream()
                .filter(s -> Math.abs(Math.cos(Math.toRadians(s.a().angleTo(s.b()) - text.angle()))) > LENGTHWISE)
                .noneMatch(s -> area.meets(line(s)));
    }

    private static boolean isFree(Area area, List<Area> taken) {
        return taken.stream().noneMatch(area::meets);
    }

    /** Whether a line that leads to a thing at its second end crosses no text or other such line and passes no other thing closely. */
    boolean isClear(Segment leader, double near) {
        return heads.stream()
                        .allMatch(h -> h.distance(leader.b()) < 1e-6
                                || Places.away(h, leader.a(), leader.b())
                                        > Math.min(near, ASIDE * h.distance(leader.b())))
                && isFree(line(leader), used);
    }

    /** Whether such a line crosses no text. */
    boolean crossesNoText(Segment leader) {
        return isFree(line(leader), texts);
    }

    /** Whether it crosses no pipe and no thing but where it ends. */
    boolean crossesNoPipe(Segment leader, double height) {
        return isFree(before(leader, height), fences);
    }

    /** Whether it crosses no plate. */
    boolean crossesNoPlate(Segment leader, double height) {
        return isFree(before(leader, height), plates);
    }

    private static Area before(Segment line, double height) {
        double length = line.a().distance(line.b());
        return line(part(line, 0, Math.max(0.5, 1 - TIP * height / length)));
    }

    /** A convex area of a drawing, as its corners in order, and the box round it. */
    record Area(List<Point> corners, Extent box) {
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
            return of(text, AIR * text.height());
        }

        /** The letters of a text with so many mm round them, anticlockwise. */
        static Area of(Text text, double air) {
            double width = Text.roughWidth(text.string(), text.height());
            Point start = text.baselineStart(width).polar(-air, text.angle());
            Point low = start.polar(-air, text.angle() + 90);
            Point high = start.polar(text.height() + air, text.angle() + 90);
            double length = width + 2 * air;
            return of(List.of(low, low.polar(length, text.angle()), high.polar(length, text.angle()), high));
        }

        boolean meets(Area other) {
            boolean near = box.minX() < other.box.maxX()
                    && other.box.minX() < box.maxX()
                    && box.minY() < other.box.maxY()
                    && other.box.minY() < box.maxY();
            return near && !apart(corners, other.corners) && !apart(other.corners, corners);
        }

        /** How far a point lies from its edge, mm. */
        double away(Point p) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < corners.size(); i++) {
                least = Math.min(least, Places.away(p, corners.get(i), corners.get((i + 1) % corners.size())));
            }
            return least;
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

        /** The part of a line that lies in an area that runs anticlockwise, as shares of its length; the first is over the second if none does. */
        double[] partOf(Segment line) {
            double from = 0;
            double to = 1;
            for (int i = 0; i < corners.size(); i++) {
                Point a = corners.get(i);
                Point b = corners.get((i + 1) % corners.size());
                double start = left(a, b, line.a());
                double end = left(a, b, line.b());
                if (start < 0 && end < 0) {
                    return new double[] {1, 0};
                }
                if (start < 0) {
                    from = Math.max(from, start / (start - end));
                } else if (end < 0) {
                    to = Math.min(to, start / (start - end));
                }
            }
            return new double[] {from, to};
        }

        /** Over 0 where a point lies to the left of a line. */
        private static double left(Point a, Point b, Point p) {
            return (b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x());
        }
    }
}
