package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Shape;

/** Lines of what lies on a floor, without words. */
final class FloorShapes {
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
}
