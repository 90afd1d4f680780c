package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/** Draws what the customer gave: outline, keep-outs, unheated floor, port and the marks to recognise it by. */
final class FloorMarks {
    /** Rows and columns of places in a region. */
    private static final int SPOTS = 12;

    private final SheetBuilder sheet;
    private final Labels labels;
    private final double unit;
    private final FloorShapes shapes;
    private final List<Extent> things = new ArrayList<>();

    FloorMarks(SheetBuilder sheet, Labels labels, double unit) {
        this.sheet = sheet;
        this.labels = labels;
        this.unit = unit;
        this.shapes = new FloorShapes(sheet, unit);
    }

    /** Keeps texts off port and outline; before anything is written. */
    void keepClear(Job.FloorPlan floor) {
        labels.block(Extent.at(Places.at(floor.port().at())).grow(2.5 * unit));
        labels.keepNamesOff(Places.at(floor.port().at()));
        floor.keepOuts().forEach(k -> labels.keepNamesOff(FloorShapes.bare(k).centre()));
        Path.polygon(Places.all(floor.outline())).parts().forEach(labels::shun);
        floor.keepOuts().forEach(this::shun);
        for (Job.Unheated cold : floor.unheated()) {
            labels.shun(TrueArcs.of(Places.all(cold.region().corners())));
        }
        for (Job.Below b : floor.below()) {
            Path.polygon(Places.all(b.region().corners())).parts().forEach(labels::shun);
        }
        for (Support s : floor.supports()) {
            List<Point> corners = Places.all(s.region().corners());
            labels.shun(new Segment(corners.get(0), corners.get(3)));
            labels.shun(new Segment(corners.get(1), corners.get(2)));
        }
    }

    /** A small thing is kept free whole, of a large one the edges, so that its name may stand within. */
    private void shun(KeepOut k) {
        Extent box;
        if (k.bare() instanceof Shape.Circle c) {
            box = Extent.at(Places.at(c.centre())).grow(c.radius());
            labels.shun(new Circle(Places.at(c.centre()), c.radius() + k.clearance()));
            labels.shun(new Circle(Places.at(c.centre()), c.radius()));
        } else if (k.bare() instanceof Shape.Polygon p) {
            List<Point> corners = Places.all(p.corners());
            box = Extent.around(corners);
            labels.shun(Path.polygon(corners));
            GrownContour.of(corners, k.clearance()).ifPresent(labels::shun);
        } else {
            box = Extent.at(Places.at(((Shape.Spot) k.bare()).at())).grow(1.5 * unit);
            if (k.clearance() > 0) {
                labels.shun(new Circle(box.centre(), k.clearance()));
            }
        }
        if (Math.min(box.width(), box.height()) < 8 * unit) {
            labels.shun(box);
        }
    }

    void draw(Job.FloorPlan floor) {
        draw(floor, List.of());
        nameWalls(floor);
        nameThings(floor);
    }

    /** Draws all of it but the names; {@code notes} are what programs are told of the outline. */
    void draw(Job.FloorPlan floor, List<String> notes) {
        sheet.add(Layer.FLOOR, TrueArcs.of(Places.all(floor.outline())));
        sheet.annotate(notes);
        shapes.port(Places.at(floor.port().at()));
        for (Job.Unheated cold : floor.unheated()) {
            sheet.add(Layer.UNHEATED, TrueArcs.of(Places.all(cold.region().corners())));
            sheet.annotate(ReadBack.unheated(cold));
        }
        floor.below().forEach(shapes::below);
        for (int i = 0; i < floor.keepOuts().size(); i++) {
            things.add(shapes.keepOut(floor.keepOuts().get(i)));
            sheet.annotate(ReadBack.keepOut(floor.keepOuts().get(i), i));
        }
    }

    /** Names of walls and places. */
    void nameWalls(Job.FloorPlan floor) {
        List<Point> outline = Places.all(floor.outline());
        floor.marks().forEach(mark -> mark(mark, outline));
    }

    /** Names of what is not heated and of what stands on the floor. */
    void nameThings(Job.FloorPlan floor) {
        floor.unheated().forEach(u -> name(u.region(), Wording.brief(u.name())));
        floor.below().forEach(b -> name(b.region(), FloorShapes.named(b)));
        for (int i = 0; i < things.size(); i++) {
            KeepOut k = floor.keepOuts().get(i);
            labels.putIn(
                    Labels.around(things.get(i), 0.8 * unit, 2.2 * unit, Wording.brief(k.name())), FloorShapes.bare(k));
        }
    }

    /** The word beside the circled cross where pipe comes to the floor. */
    void namePort(Job.FloorPlan floor) {
        Extent sign = Extent.at(Places.at(floor.port().at())).grow(1.6 * unit);
        labels.put(Labels.around(sign, 1.6 * unit, 2.2 * unit, "pipe port").subList(1, 5), sign.centre());
    }

    /** Its name stands in it wherever there is room, else a line leads to anywhere in it. */
    private void name(Shape.Polygon where, String name) {
        Path region = TrueArcs.of(Places.all(where.corners()));
        double height = 2.2 * unit;
        List<Point> spots = spots(where);
        List<Text> places = new ArrayList<>();
        spots.stream()
                .map(s -> Text.level(s, height, Anchor.MIDDLE_CENTRE, name))
                .filter(t -> holds(where, t.extent()))
                .forEach(places::add);
        places.addAll(Labels.around(region.extent(), unit, height, name));
        labels.put(places, spots.isEmpty() ? List.of(region.extent().centre()) : spots);
    }

    /** Points of a region, those near its middle first. */
    private static List<Point> spots(Shape.Polygon region) {
        Extent box = Extent.around(Places.all(region.corners()));
        List<Point> spots = new ArrayList<>();
        for (int i = 1; i < SPOTS; i++) {
            for (int j = 1; j < SPOTS; j++) {
                spots.add(new Point(box.minX() + box.width() * i / SPOTS, box.minY() + box.height() * j / SPOTS));
            }
        }
        spots.removeIf(p -> !holds(region, Extent.at(p)));
        spots.sort(Comparator.comparingDouble(p -> p.distance(box.centre())));
        return spots;
    }

    /** Whether the corners of a box lie in a region. */
    private static boolean holds(Shape.Polygon region, Extent box) {
        List<Point> ring = Places.all(region.corners());
        return Places.isInside(new Point(box.minX(), box.minY()), ring)
                && Places.isInside(new Point(box.maxX(), box.minY()), ring)
                && Places.isInside(new Point(box.maxX(), box.maxY()), ring)
                && Places.isInside(new Point(box.minX(), box.maxY()), ring);
    }

    /** A mark stands outside the edge it belongs to, along it; one inside the floor stands at its point. */
    private void mark(Job.FloorMark mark, List<Point> outline) {
        Point at = Places.at(mark.at());
        int edge = mark.edge() >= 0 ? mark.edge() : nearestEdge(at, outline, 2 * unit);
        if (edge < 0) {
            labels.put(Labels.around(Extent.at(at), unit, 2.8 * unit, Wording.brief(mark.text())));
            sheet.annotate(ReadBack.mark(mark));
            return;
        }
        Point a = outline.get(edge);
        Point b = outline.get((edge + 1) % outline.size());
        double along = a.angleTo(b);
        double outward = Places.isAnticlockwise(outline) ? along - 90 : along + 90;
        double readable = readable(along);
        boolean above = Math.cos(Math.toRadians(outward - readable - 90)) > 0;
        Anchor anchor = above ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        List<Text> places = new ArrayList<>();
        for (double step : new double[] {0, 0.5, -0.5, 1, -1, 1.5, -1.5, 2, -2}) {
            Point foot = at.polar(2 * unit, outward).polar(step * 14 * unit, along);
            places.add(new Text(foot, 2.8 * unit, readable, anchor, Wording.brief(mark.text())));
        }
        labels.put(places);
        sheet.annotate(ReadBack.mark(mark));
    }

    /** The side that passes a point by less than so many mm; -1 if none does. */
    static int nearestEdge(Point p, List<Point> outline, double near) {
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get(i);
            Point b = outline.get((i + 1) % outline.size());
            double ux = (b.x() - a.x()) / a.distance(b);
            double uy = (b.y() - a.y()) / a.distance(b);
            double t = (p.x() - a.x()) * ux + (p.y() - a.y()) * uy;
            double off = Math.abs((p.y() - a.y()) * ux - (p.x() - a.x()) * uy);
            if (off < near && t >= 0 && t <= a.distance(b)) {
                return i;
            }
        }
        return -1;
    }

    /** The direction of a line in which letters on it are read from below or from the right, degrees. */
    static double readable(double angle) {
        if (angle > 90 + 1e-9) {
            return angle - 180;
        }
        return angle <= -90 + 1e-9 ? angle + 180 : angle;
    }
}
