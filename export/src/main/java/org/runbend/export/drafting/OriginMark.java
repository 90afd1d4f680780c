package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;

/** Draws where all measures begin: a ringed cross at 0, 0 itself. */
final class OriginMark {
    static final String WORDS = "0, 0";
    private static final double RING = 1.2;
    private static final double ARM = 2.2;

    /** How far off the floor it is still shown, mm of paper. */
    private static final double ROOM = 10;

    private OriginMark() {}

    /** Whether 0, 0 lies on the floor or so near that it does not make the drawing larger. */
    static boolean isShown(Job job) {
        Extent floor = Extent.around(Places.all(job.floor().outline()));
        double room = ROOM * Places.unit(floor);
        Extent e = floor.grow(room);
        return e.minX() <= 0 && e.maxX() >= 0 && e.minY() <= 0 && e.maxY() >= 0;
    }

    static void draw(SheetBuilder sheet, Labels labels, double unit, Job job) {
        if (!isShown(job)) {
            return;
        }
        Point o = new Point(0, 0);
        sheet.add(Layer.NOTE, new Circle(o, RING * unit));
        sheet.add(Layer.NOTE, new Segment(o.plus(-ARM * unit, 0), o.plus(ARM * unit, 0)));
        sheet.add(Layer.NOTE, new Segment(o.plus(0, -ARM * unit), o.plus(0, ARM * unit)));
        double height = 2.2 * unit;
        labels.put(
                List.of(
                        Text.level(o.plus(-1.6 * unit, -1.6 * unit), height, Anchor.TOP_RIGHT, WORDS),
                        Text.level(o.plus(-1.6 * unit, 1.6 * unit), height, Anchor.BOTTOM_RIGHT, WORDS),
                        Text.level(o.plus(1.6 * unit, 1.6 * unit), height, Anchor.BOTTOM_LEFT, WORDS),
                        Text.level(o.plus(1.6 * unit, -1.6 * unit), height, Anchor.TOP_LEFT, WORDS)),
                o);
        labels.shun(Extent.at(o).grow(RING * unit));
    }
}
