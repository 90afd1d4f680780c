package org.runbend.export.drafting;

import java.util.ArrayList;
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

/** Draws what the customer gave: outline, keep-outs, unheated floor, port and the marks to recognise it by. */
final class FloorMarks {
    private final SheetBuilder sheet;
    private final Labels labels;
    private final double unit;

    FloorMarks(SheetBuilder sheet, Labels labels, double unit) {
        this.sheet = sheet;
        this.labels = labels;
        this.unit = unit;
    }

    void draw(Job.FloorPlan floor) {
        List<Point> outline = Places.all(floor.outline());
        sheet.add(Layer.FLOOR, Path.polygon(outline));
        port(Places.at(floor.port().at()));
        floor.marks().forEach(mark -> mark(mark, outline));
        floor.keepOuts().forEach(this::keepOut);
        for (Job.Unheated cold : floor.unheated()) {
            Path region = Path.polygon(Places.all(cold.region().corners()));
            sheet.add(Layer.UNHEATED, region);
            labels.put(Labels.around(region.extent(), unit, 2.2 * unit, Wording.brief(cold.name())));
        }
    }

    private void port(Point at) {
        sheet.add(Layer.NOTE, new Circle(at, 1.6 * unit));
        sheet.add(Layer.NOTE, new Segment(at.plus(-1.6 * unit, 0), at.plus(1.6 * unit, 0)));
        sheet.add(Layer.NOTE, new Segment(at.plus(0, -1.6 * unit), at.plus(0, 1.6 * unit)));
        labels.block(Extent.at(at).grow(2.5 * unit));
    }

    /** A mark stands outside the edge it belongs to, along it; one inside the floor stands at its point. */
    private void mark(Job.FloorMark mark, List<Point> outline) {
        Point at = Places.at(mark.at());
        int edge = mark.edge() >= 0 ? mark.edge() : nearestEdge(at, outline);
        if (edge < 0) {
            labels.put(Labels.around(Extent.at(at), unit, 2.8 * unit, Wording.brief(mark.text())));
            return;
        }
        Point a = outline.get(edge);
        Point b = outline.get((edge + 1) % outline.size());
        double along = a.angleTo(b);
        double outward = isAnticlockwise(outline) ? along - 90 : along + 90;
        double readable = readable(along);
        boolean above = Math.cos(Math.toRadians(outward - readable - 90)) > 0;
        Anchor anchor = above ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        List<Text> places = new ArrayList<>();
        for (double step : new double[] {0, 1, -1, 2, -2}) {
            Point foot = at.polar(2 * unit, outward).polar(step * 14 * unit, along);
            places.add(new Text(foot, 2.8 * unit, readable, anchor, Wording.brief(mark.text())));
        }
        labels.put(places);
    }

    private int nearestEdge(Point p, List<Point> outline) {
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get(i);
            Point b = outline.get((i + 1) % outline.size());
            double ux = (b.x() - a.x()) / a.distance(b);
            double uy = (b.y() - a.y()) / a.distance(b);
            double t = (p.x() - a.x()) * ux + (p.y() - a.y()) * uy;
            double off = Math.abs((p.y() - a.y()) * ux - (p.x() - a.x()) * uy);
            if (off < 2 * unit && t >= 0 && t <= a.distance(b)) {
                return i;
            }
        }
        return -1;
    }

    private void keepOut(KeepOut k) {
        Extent box;
        if (k.bare() instanceof org.runbend.optimizer.job.Shape.Circle c) {
            box = round(Places.at(c.centre()), c.radius(), k.clearance());
        } else if (k.bare() instanceof org.runbend.optimizer.job.Shape.Polygon p) {
            box = polygon(Places.all(p.corners()), k.clearance());
        } else {
            box = spot(Places.at(((org.runbend.optimizer.job.Shape.Spot) k.bare()).at()), k.clearance());
        }
        labels.put(Labels.around(box, 0.8 * unit, 2.2 * unit, Wording.brief(k.name())));
    }

    private Extent round(Point centre, double radius, double clearance) {
        if (clearance > 0) {
            sheet.add(Layer.KEEP_OUT, new Circle(centre, radius + clearance));
        }
        sheet.add(Layer.KEEP_OUT, new Circle(centre, radius));
        return Extent.at(centre).grow(radius + clearance);
    }

    private Extent polygon(List<Point> corners, double clearance) {
        GrownContour.of(corners, clearance).ifPresent(grown -> sheet.add(Layer.KEEP_OUT, grown));
        sheet.add(Layer.KEEP_OUT, Path.polygon(corners));
        return Extent.around(corners).grow(clearance);
    }

    /** A spot has no size: a circle of its clearance and a cross. The name stands beside the cross. */
    private Extent spot(Point at, double clearance) {
        if (clearance > 0) {
            sheet.add(Layer.KEEP_OUT, new Circle(at, clearance));
        }
        sheet.add(Layer.NOTE, new Segment(at.plus(-unit, 0), at.plus(unit, 0)));
        sheet.add(Layer.NOTE, new Segment(at.plus(0, -unit), at.plus(0, unit)));
        labels.block(Extent.at(at).grow(unit));
        return Extent.at(at).grow(Math.max(clearance, unit));
    }

    /** The direction of a line in which letters on it are read from below or from the right, degrees. */
    static double readable(double angle) {
        if (angle > 90 + 1e-9) {
            return angle - 180;
        }
        return angle <= -90 + 1e-9 ? angle + 180 : angle;
    }

    private static boolean isAnticlockwise(List<Point> ring) {
        double twice = 0;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice > 0;
    }
}
