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
import org.runbend.optimizer.setout.Datum;
import org.runbend.optimizer.setout.Frame;
import org.runbend.optimizer.tape.TapeSheet;

/** Draws the two lines that a floor is marked out from, and the marks at their ends and crossing. */
final class DatumLines {
    /** How far a line juts out beyond its ends, mm of paper. */
    private static final double BEYOND = 4;

    /** From there to the middle of its name. */
    private static final double CLEAR = 3.6;

    private static final double LETTERS = 2.8;
    private static final double RING = 1.1;

    private DatumLines() {}

    /** The lines and the marks on them, which names keep clear of. */
    static void draw(SheetBuilder sheet, Labels labels, double unit, Datum datum) {
        Frame frame = datum.frame();
        double out = BEYOND * unit;
        for (Segment line : List.of(
                line(frame, datum.base().from() - out, 0, datum.base().to() + out, 0),
                line(frame, 0, datum.square().from() - out, 0, datum.square().to() + out))) {
            sheet.add(Layer.NOTE, line);
            labels.shun(line);
        }
        for (TapeSheet.Thing mark : datum.marks()) {
            Point at = Places.at(mark.at());
            sheet.add(Layer.TITLE, new Circle(at, RING * unit));
            labels.shun(Extent.at(at).grow(RING * unit));
            labels.keepLeadersOff(at);
            labels.keepNamesOff(at);
        }
    }

    /** The names of the marks. */
    static void name(Labels labels, double unit, Datum datum) {
        Frame frame = datum.frame();
        for (TapeSheet.Thing mark : datum.marks()) {
            org.runbend.optimizer.job.Point in = frame.from(mark.at());
            boolean along = Math.abs(in.y()) < Math.abs(in.x());
            double way = along ? Math.signum(in.x()) : Math.signum(in.y());
            Point at = Places.at(mark.at());
            double angle = frame.angle() + (along ? 0 : 90) + (way < 0 ? 180 : 0);
            boolean crossing = Math.abs(in.x()) < 1 && Math.abs(in.y()) < 1;
            double off = (crossing ? 3 : BEYOND + CLEAR) * unit;
            Point place = crossing ? at.polar(off, frame.angle() + 225) : at.polar(off, angle);
            labels.put(
                    List.of(
                            Text.level(place, LETTERS * unit, Anchor.MIDDLE_CENTRE, mark.name()),
                            Text.level(at.polar(off, angle + 60), LETTERS * unit, Anchor.MIDDLE_CENTRE, mark.name()),
                            Text.level(at.polar(off, angle - 60), LETTERS * unit, Anchor.MIDDLE_CENTRE, mark.name())),
                    at);
        }
    }

    private static Segment line(Frame frame, double u1, double v1, double u2, double v2) {
        return new Segment(Places.at(frame.onFloor(u1, v1)), Places.at(frame.onFloor(u2, v2)));
    }
}
