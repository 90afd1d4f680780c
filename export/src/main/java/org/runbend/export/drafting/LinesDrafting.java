package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.setout.Frame;
import org.runbend.optimizer.setout.Lie;
import org.runbend.optimizer.setout.SetOut;
import org.runbend.optimizer.tape.TapeSheet;

/** Draws what is snapped and marked on a bare floor: lines with their distances, and where runs begin and end on them. */
public final class LinesDrafting {
    private static final double LETTERS = 2.2;
    /** From a run to the middle of its number: nearer to it than to its neighbour. */
    private static final double BESIDE = 1.8;
    /** Where along a run its number may stand. */
    private static final double[] SHARES = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9};
    /** How far a line juts out beyond the floor, where its distance stands, mm of paper. */
    private static final double OUT = 5;

    private final SheetBuilder sheet;
    private final Labels labels;
    private final TapeText tape;
    private final Frame frame;
    private final double unit;

    private LinesDrafting(Job job, SetOut marks, double unit) {
        sheet = new SheetBuilder("Lines of " + job.title());
        labels = new Labels(sheet);
        tape = new TapeText(job);
        frame = marks.datum().frame();
        this.unit = unit;
    }

    /** The lines of a plan at so many floor mm to a mm of paper. */
    public static Sheet draw(KitPlan plan, SetOut marks, double unit) {
        return new LinesDrafting(plan.job(), marks, unit).draw(plan.job(), marks, plan.tape());
    }

    private Sheet draw(Job job, SetOut marks, TapeSheet tapeSheet) {
        List<Point> outline = Places.all(job.floor().outline());
        sheet.add(Layer.FLOOR, TrueArcs.of(outline));
        labels.shun(TrueArcs.of(outline));
        FloorShapes shapes = new FloorShapes(sheet, unit);
        List<Extent> things =
                job.floor().keepOuts().stream().map(shapes::keepOut).toList();
        things.forEach(labels::shun);
        DatumLines.draw(sheet, labels, unit, marks.datum());
        Span us = span(outline, true);
        Span vs = span(outline, false);
        for (Lie lie : List.of(Lie.ALONG, Lie.ACROSS, Lie.ASLANT)) {
            List<SetOut.ChalkLine> lines =
                    marks.lines().stream().filter(l -> l.lie() == lie).toList();
            boolean close = areClose(lines);
            lines.forEach(l -> straight(l, us, vs, close));
        }
        for (SetOut.ChalkLine line : marks.lines()) {
            line.stops().forEach(this::run);
        }
        corners(tapeSheet);
        for (SetOut.LoopMarks loop : marks.loops()) {
            for (SetOut.BendMark b : loop.bends()) {
                centre(b);
            }
        }
        RunningMeasures measures = new RunningMeasures(sheet, labels, tape, frame, unit);
        measures.mark(marks.lines());
        DatumLines.name(labels, unit, marks.datum());
        measures.number(marks.lines());
        for (SetOut.ChalkLine line : marks.lines()) {
            line.stops().forEach(this::number);
        }
        for (int i = 0; i < things.size(); i++) {
            String name = Wording.brief(job.floor().keepOuts().get(i).name());
            labels.put(Labels.around(things.get(i), 0.8 * unit, LETTERS * unit, name));
        }
        return sheet.build();
    }

    /** Names of corners stand outside them, as on the drawing that the customer confirms. */
    private void corners(TapeSheet floor) {
        List<Point> ring = floor.corners().stream().map(c -> Places.at(c.at())).toList();
        for (int i = 0; i < ring.size(); i++) {
            Point at = ring.get(i);
            Point before = ring.get(Math.floorMod(i - 1, ring.size()));
            Point after = ring.get((i + 1) % ring.size());
            double in = at.angleTo(after);
            double turn = Math.floorMod(Math.round(at.angleTo(before) - in), 360);
            double outward = in + turn / 2 + 180;
            List<Text> places = new ArrayList<>();
            for (double off : new double[] {3, 4.5, 6, 8}) {
                for (double way : new double[] {0, 25, -25, 50, -50}) {
                    places.add(Text.level(
                            at.polar(off * unit, outward + way),
                            2.8 * unit,
                            Anchor.MIDDLE_CENTRE,
                            TapeText.shortName(floor.corners().get(i).name())));
                }
            }
            labels.put(places, at);
        }
    }

    /** Whether distances written side by side at the ends of lines would run into each other. */
    private boolean areClose(List<SetOut.ChalkLine> lines) {
        double[] offsets =
                lines.stream().mapToDouble(SetOut.ChalkLine::offset).sorted().toArray();
        double widest = lines.stream()
                .mapToDouble(l -> Text.roughWidth(tape.of(l.offset()), LETTERS * unit))
                .max()
                .orElse(0);
        return IntStream.range(1, offsets.length).anyMatch(i -> offsets[i] - offsets[i - 1] < widest + unit);
    }

    private void straight(SetOut.ChalkLine line, Span us, Span vs, boolean close) {
        if (line.lie() == Lie.ASLANT) {
            SetOut.Stop stop = line.stops().get(0);
            if (!stop.bends()) {
                sheet.add(Layer.NOTE, new Segment(at(stop.from()), at(stop.to())));
            }
            return; // where two bends meet aslant there is a place and no line
        }
        boolean along = line.lie() == Lie.ALONG;
        double out = OUT * unit;
        Point a = along ? on(us.from - out, line.offset()) : on(line.offset(), vs.from - out);
        Point b = along ? on(us.to + out, line.offset()) : on(line.offset(), vs.to + out);
        sheet.add(Layer.DIMENSION, new Segment(a, b));
        labels.shun(new Segment(a, b));
        if (Math.abs(line.offset()) < 0.05) {
            return; // the base line or the square line itself, named by its ends
        }
        String words = tape.of(line.offset());
        double angle = a.angleTo(b);
        boolean level = Math.abs(Math.cos(Math.toRadians(angle))) > 0.7;
        distance(a, angle + 180, level, close, words);
        distance(b, angle, level, close, words);
    }

    /** The distance of a line at one of its ends, beyond it; read from the right where upright lines are close. */
    private void distance(Point end, double away, boolean level, boolean close, String words) {
        Anchor anchor;
        double angle = 0;
        if (!level && close) {
            angle = FloorMarks.readable(Math.IEEEremainder(away, 360));
            anchor = Math.cos(Math.toRadians(away - angle)) > 0 ? Anchor.MIDDLE_LEFT : Anchor.MIDDLE_RIGHT;
        } else if (level) {
            anchor = Math.cos(Math.toRadians(away)) > 0 ? Anchor.MIDDLE_LEFT : Anchor.MIDDLE_RIGHT;
        } else {
            anchor = Math.sin(Math.toRadians(away)) > 0 ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        }
        Text text = new Text(end.polar(1.2 * unit, away), LETTERS * unit, angle, anchor, words);
        sheet.add(Layer.NOTE, text);
        labels.block(text);
    }

    private void run(SetOut.Stop stop) {
        if (!stop.bends()) {
            Segment run = new Segment(at(stop.from()), at(stop.to()));
            sheet.add(Layer.PIPE, run);
            labels.shun(run);
        }
    }

    /** The number of a run beside it, about its middle. */
    private void number(SetOut.Stop stop) {
        if (stop.bends()) {
            return;
        }
        Point a = at(stop.from());
        Point b = at(stop.to());
        String name = stop.loop() + stop.number();
        double angle = FloorMarks.readable(a.angleTo(b));
        List<Text> places = new ArrayList<>();
        for (double share : SHARES) {
            Point at = Places.between(a, b, share);
            for (int side : new int[] {90, -90}) {
                Point off = at.polar(BESIDE * unit, angle + side);
                places.add(new Text(off, LETTERS * unit, angle, Anchor.MIDDLE_CENTRE, name));
            }
        }
        labels.put(places, Places.between(a, b, 0.5));
    }

    private void centre(SetOut.BendMark bend) {
        Point c = at(bend.centre());
        double d = 0.9 * unit;
        sheet.add(Layer.NOTE, new Segment(c.plus(-d, 0), c.plus(d, 0)));
        sheet.add(Layer.NOTE, new Segment(c.plus(0, -d), c.plus(0, d)));
        sheet.add(Layer.NOTE, new Circle(c, 0.7 * unit));
        labels.shun(Extent.at(c).grow(d));
    }

    private Point at(org.runbend.optimizer.job.Point p) {
        return on(p.x(), p.y());
    }

    private Point on(double along, double across) {
        return Places.at(frame.onFloor(along, across));
    }

    private Span span(List<Point> outline, boolean along) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Point p : outline) {
            org.runbend.optimizer.job.Point in = frame.from(new org.runbend.optimizer.job.Point(p.x(), p.y()));
            least = Math.min(least, along ? in.x() : in.y());
            most = Math.max(most, along ? in.x() : in.y());
        }
        return new Span(least, most);
    }

    private record Span(double from, double to) {}
}
