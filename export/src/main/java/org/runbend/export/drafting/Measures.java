package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** Draws the measures: the floor's size, where the holes lie, the spacing. */
final class Measures {
    /** Rows of measures, mm on paper from the floor; marks stand between. */
    private static final double NEAR = 14;

    private static final double FAR = 20;
    private static final double CLOSE = 9;

    /** Of the measure of a slanted side, and of digits. */
    private static final double BESIDE = 7;

    private static final double HEIGHT = 2.5;

    /** A side that leaves level or upright by less is one of them, mm. */
    private static final double SLANT = 5;

    /** Corners that turn by less are none that a cutter rounds, degrees. */
    private static final double SHARP = 5;

    /** Measures closer than this are one, mm. */
    private static final double SAME = 0.5;

    /** So many measures of a row may be too short for their digits, which are then written at its ends. */
    private static final int MOST_NARROW = 2;

    private final SheetBuilder sheet;
    private final double unit;
    private final TapeText tape;

    Measures(SheetBuilder sheet, double unit, Job job) {
        tape = new TapeText(job);
        this.sheet = sheet;
        this.unit = unit;
    }

    void draw(KitPlan plan, Extent floor) {
        Path outline = TrueArcs.of(Places.all(plan.job().floor().outline()));
        Point corner = new Point(floor.minX(), floor.minY());
        List<Double> across = holes(plan, Point::x, floor.minX(), floor.maxX());
        List<Double> up = holes(plan, Point::y, floor.minY(), floor.maxY());
        row(across, -NEAR, x -> new Point(x, floor.minY()));
        row(up, NEAR, y -> new Point(floor.minX(), y));
        add(corner, new Point(floor.maxX(), floor.minY()), across.size() > 1 ? -FAR : -NEAR, "");
        add(corner, new Point(floor.minX(), floor.maxY()), up.size() > 1 ? FAR : NEAR, "");
        List<Point> corners = outline.vertices().stream().map(Vertex::point).toList();
        List<Point> things = HoleMarks.middles(plan.job());
        List<Double> over = chain(corners, things, Point::x, floor.minX(), floor.maxX());
        row(over, NEAR, x -> new Point(x, floor.maxY()));
        row(chain(corners, things, Point::y, floor.minY(), floor.maxY()), -NEAR, y -> new Point(floor.maxX(), y));
        slanted(outline, floor);
        spacing(plan, floor, over.isEmpty() ? CLOSE : FAR);
    }

    private void row(List<Double> chain, double offset, DoubleFunction<Point> place) {
        for (int i = 1; i < chain.size(); i++) {
            Point a = place.apply(chain.get(i - 1));
            Point b = place.apply(chain.get(i));
            // a first measure too short for its text is written away from the next one
            boolean before =
                    i == 1 && chain.size() > 2 && measure(a, b, offset, "").textMoved();
            add(before ? b : a, before ? a : b, before ? -offset : offset, "");
        }
    }

    /**
     * The floor's edge and the middles of the pipe's holes, in order; those within half a millimetre are one. Where holes of
     * several loops would make digits run into each other, those that have room.
     */
    private List<Double> holes(KitPlan plan, ToDoubleFunction<Point> axis, double from, double to) {
        List<Double> all = holes(plan, axis, from, to, SAME);
        double room = room(to - from);
        long narrow = IntStream.range(1, all.size())
                .filter(i -> all.get(i) - all.get(i - 1) < room)
                .count();
        return narrow > MOST_NARROW ? holes(plan, axis, from, to, room) : all;
    }

    private static List<Double> holes(
            KitPlan plan, ToDoubleFunction<Point> axis, double from, double to, double apart) {
        TreeSet<Double> at = new TreeSet<>(List.of(from));
        plan.holes().stream()
                .mapToDouble(h -> axis.applyAsDouble(Places.at(h.at())))
                .filter(v -> v > from + SAME && v < to - SAME)
                .filter(v -> isApart(at, v, apart))
                .forEach(at::add);
        return List.copyOf(at);
    }

    /** From edge to edge by the corners and then the things between, those that have room; nothing where there are none. */
    private List<Double> chain(
            List<Point> corners, List<Point> things, ToDoubleFunction<Point> axis, double from, double to) {
        TreeSet<Double> at = new TreeSet<>(List.of(from, to));
        for (List<Point> some : List.of(corners, things)) {
            some.stream()
                    .mapToDouble(axis)
                    .sorted()
                    .filter(v -> isApart(at, v, room(to - from)))
                    .forEach(at::add);
        }
        return at.size() > 2 ? List.copyOf(at) : List.of();
    }

    /** What a measure needs so that its digits stand over its line, mm. */
    private double room(double longest) {
        return Text.roughWidth(tape.beside(longest), HEIGHT * unit) + HEIGHT * unit;
    }

    private static boolean isApart(Set<Double> at, double value, double least) {
        return at.stream().allMatch(v -> Math.abs(v - value) > least);
    }

    /** Sides that are neither level nor upright have their own length beside them, outside, if that is not too near the others. */
    private void slanted(Path outline, Extent floor) {
        boolean left = Places.isAnticlockwise(
                outline.vertices().stream().map(Vertex::point).toList());
        Extent free = floor.grow((BESIDE + HEIGHT) * unit);
        for (Shape part : outline.parts()) {
            if (part instanceof Segment s && isSlanted(s)) {
                double length = s.a().distance(s.b());
                Dimension d = new Dimension(
                        s.a(), s.b(), (left ? -1 : 1) * BESIDE * unit, HEIGHT * unit, tape.beside(length));
                if (length > 2 * room(length) && free.union(d.extent()).equals(free)) {
                    sheet.add(Layer.DIMENSION, d);
                }
            }
        }
    }

    /** Whether the floor has a sharp corner that points into it. */
    static boolean hasInnerCorner(Job job) {
        Path outline = TrueArcs.of(Places.all(job.floor().outline()));
        List<Shape> parts = outline.parts();
        double hand = Places.isAnticlockwise(
                        outline.vertices().stream().map(Vertex::point).toList())
                ? 1
                : -1;
        for (int i = 0; i < parts.size(); i++) {
            double turn = heading(parts.get((i + 1) % parts.size()), true) - heading(parts.get(i), false);
            if (hand * Math.IEEEremainder(turn, 360) < -SHARP) {
                return true;
            }
        }
        return false;
    }

    /** Direction in which a part of an outline begins or ends, degrees. */
    private static double heading(Shape part, boolean atStart) {
        if (part instanceof Arc a) {
            return a.startAngle() + (atStart ? 0 : a.sweep()) + Math.copySign(90, a.sweep());
        }
        Segment s = (Segment) part;
        return s.a().angleTo(s.b());
    }

    /** Radii of round corners and curved sides, those of one size at the longest of them, with how many there are. */
    void radii(Job job, Labels labels) {
        Map<Long, List<Arc>> sizes = new TreeMap<>();
        for (Shape part : TrueArcs.of(Places.all(job.floor().outline())).parts()) {
            if (part instanceof Arc a) {
                sizes.computeIfAbsent(Math.round(10 * a.radius()), r -> new ArrayList<>())
                        .add(a);
            }
        }
        sizes.values().forEach(arcs -> {
            Arc arc = arcs.stream().max(Comparator.comparingDouble(Arc::length)).orElseThrow();
            String count = arcs.size() > 1 ? arcs.size() + " x " : "";
            Point middle = arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() / 2);
            String text = count + "R " + tape.beside(arc.radius());
            labels.put(
                    Labels.around(Extent.at(middle), 2 * unit, HEIGHT * unit, text)
                            .subList(1, 5),
                    middle);
        });
    }

    private static boolean isSlanted(Segment s) {
        return Math.abs(s.a().x() - s.b().x()) > SLANT && Math.abs(s.a().y() - s.b().y()) > SLANT;
    }

    /** Over the floor, between two lines of the lattice; a lattice at an angle is told in words only. */
    private void spacing(KitPlan plan, Extent floor, double row) {
        KitPlan.LatticePlace lattice = plan.lattice();
        if (lattice.angle() != 0 || !plan.isOnLattice()) {
            return;
        }
        double first = plan.loops().stream()
                .flatMap(l -> l.breakdown().elements().stream())
                .mapToDouble(e -> Math.min(e.from().x(), e.to().x()))
                .min()
                .orElse(floor.minX());
        double column = Math.rint((first - lattice.origin().x()) / lattice.spacing()) + 1;
        List<Dimension> places = DoubleStream.iterate(
                        lattice.origin().x() + column * lattice.spacing(),
                        x -> x + lattice.spacing() < floor.maxX(),
                        x -> x + lattice.spacing())
                .mapToObj(x -> measure(
                        new Point(x, floor.maxY()), new Point(x + lattice.spacing(), floor.maxY()), row, "spacing "))
                .toList();
        List<Obstacles.Area> digits =
                measures().map(d -> Obstacles.Area.of(d.label())).toList();
        places.stream()
                .filter(d -> strikesNone(d, digits))
                .findFirst()
                .or(() -> places.stream().findFirst())
                .ifPresent(d -> sheet.add(Layer.DIMENSION, d));
    }

    /** The measures that are drawn by now. */
    private Stream<Dimension> measures() {
        return sheet.build().marks().stream()
                .map(Mark::shape)
                .filter(Dimension.class::isInstance)
                .map(Dimension.class::cast);
    }

    /** Whether the lines of a measure run through no digits of others. */
    private static boolean strikesNone(Dimension d, List<Obstacles.Area> digits) {
        return d.parts().stream()
                .filter(Segment.class::isInstance)
                .map(Segment.class::cast)
                .map(s -> Obstacles.Area.of(List.of(s.a(), s.b())))
                .noneMatch(line -> digits.stream().anyMatch(line::meets));
    }

    private void add(Point a, Point b, double offset, String word) {
        sheet.add(Layer.DIMENSION, measure(a, b, offset, word));
    }

    private Dimension measure(Point a, Point b, double offset, String word) {
        String text = word + tape.beside(a.distance(b));
        return new Dimension(a, b, offset * unit, HEIGHT * unit, text);
    }
}
