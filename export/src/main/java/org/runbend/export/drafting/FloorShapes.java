package org.runbend.export.drafting;

import java.util.List;
import java.util.stream.IntStream;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/** Lines of what lies on a floor, without words. */
final class FloorShapes {
    /** Corners of a ring that stands for a circle. */
    private static final int ROUND = 32;

    private final SheetBuilder sheet;
    private final double unit;

    FloorShapes(SheetBuilder sheet, double unit) {
        this.sheet = sheet;
        this.unit = unit;
    }

    void port(Point at) {
        sheet.add(Layer.NOTE, new Circle(at, 1.6 * unit));
        sheet.add(Layer.NOTE, new Segment(at.plus(-1.6 * unit, 0), at.plus(1.6 * unit, 0)));
        sheet.add(Layer.NOTE, new Segment(at.plus(0, -1.6 * unit), at.plus(0, 1.6 * unit)));
    }

    /** A line of dashes of a length that a print shows apart, the first and the last whole. */
    void dashed(Point a, Point b) {
        int dashes = (int) Math.max(1, Math.round(a.distance(b) / (3 * unit)));
        double parts = 3.0 * dashes - 1;
        for (int i = 0; i < dashes; i++) {
            Point from = Places.between(a, b, 3 * i / parts);
            sheet.add(Layer.NOTE, new Segment(from, Places.between(a, b, (3 * i + 2) / parts)));
        }
    }

    /** What lies under the floor, its outline in dashes. */
    void below(Job.Below below) {
        List<Point> ring = Places.all(below.region().corners());
        for (int i = 0; i < ring.size(); i++) {
            dashed(ring.get(i), ring.get((i + 1) % ring.size()));
        }
    }

    /** A support under the floor: dashes along both its sides. */
    void support(Support support) {
        List<Point> corners = Places.all(support.region().corners());
        dashed(corners.get(0), corners.get(3));
        dashed(corners.get(1), corners.get(2));
    }

    /** What it is called on a drawing. */
    static String named(Job.Below below) {
        return "under the floor: " + Wording.brief(below.name());
    }

    /** A keep-out with its clearance; gives back the box round both. */
    Extent keepOut(KeepOut k) {
        if (k.bare() instanceof Shape.Circle c) {
            return round(Places.at(c.centre()), c.radius(), k.clearance());
        }
        if (k.bare() instanceof Shape.Polygon p) {
            return polygon(Places.all(p.corners()), k.clearance());
        }
        Shape.Spot spot = (Shape.Spot) k.bare();
        return spot(Places.at(spot.at()), spot.radius(), k.clearance());
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
        sheet.add(Layer.KEEP_OUT, TrueArcs.of(corners));
        return Extent.around(corners).grow(clearance);
    }

    /** A thing of which only the middle was given: a disc with its clearance and a cross. */
    private Extent spot(Point at, double radius, double clearance) {
        round(at, radius, clearance);
        sheet.add(Layer.NOTE, new Segment(at.plus(-unit, 0), at.plus(unit, 0)));
        sheet.add(Layer.NOTE, new Segment(at.plus(0, -unit), at.plus(0, unit)));
        return Extent.at(at).grow(Math.max(radius + clearance, unit));
    }

    /** The box round a thing without its clearance. */
    static Extent bare(KeepOut k) {
        if (k.bare() instanceof Shape.Polygon p) {
            return Extent.around(Places.all(p.corners()));
        }
        return k.bare() instanceof Shape.Circle c
                ? Extent.at(Places.at(c.centre())).grow(c.radius())
                : Extent.at(Places.at(((Shape.Spot) k.bare()).at()));
    }

    /** Corners round a thing with its clearance; of a round one, so many that it is nearly round. */
    static List<Point> ring(KeepOut k) {
        if (k.bare() instanceof Shape.Polygon p) {
            return GrownContour.of(Places.all(p.corners()), k.clearance())
                    .map(grown -> grown.vertices().stream().map(Vertex::point).toList())
                    .orElse(Places.all(p.corners()));
        }
        boolean round = k.bare() instanceof Shape.Circle;
        Point at = round ? Places.at(((Shape.Circle) k.bare()).centre()) : Places.at(((Shape.Spot) k.bare()).at());
        double radius = k.clearance() + (round ? ((Shape.Circle) k.bare()).radius() : ((Shape.Spot) k.bare()).radius());
        return IntStream.range(0, ROUND)
                .mapToObj(i -> at.polar(Math.max(radius, 1), i * 360.0 / ROUND))
                .toList();
    }
}
