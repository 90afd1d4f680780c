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
    private static final double TICK = 1;
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
            line.stops().forEach(s -> ticks(line.lie(), s));
        }
        for (SetOut.ChalkLine line : marks.lines()) {
            line.stops().forEach(s -> numbers(line.lie(), s));
        }
        for (SetOut.LoopMarks loop : marks.loops()) {
            for (SetOut.BendMark b : loop.bends()) {
                centre(b);
            }
        }
        for (int i = 0; i < things.size(); i++) {
            String name = Wording.brief(job.floor().keepOuts().get(i).name());
            labels.put(Labels.around(things.get(i), 0.8 * unit, LETTERS * unit, name));
        }
        corners(tapeSheet);
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

    private void ticks(Lie lie, SetOut.Stop stop) {
        Point a = at(stop.from());
        Point b = at(stop.to());
        if (!stop.bends()) {
            sheet.add(Layer.PIPE, new Segment(a, b));
            tick(a, a.angleTo(b));
            tick(b, a.angleTo(b));
        } else {
            tick(a, frame.angle() + (lie == Lie.ACROSS ? 90 : 0));
        }
    }

    private void tick(Point p, double angle) {
        sheet.add(Layer.NOTE, new Segment(p.polar(TICK * unit, angle + 90), p.polar(-TICK * unit, angle + 90)));
        labels.shun(Extent.at(p).grow(TICK * unit));
    }

    /** Distances from the other line beside both ends, the number of the run at its middle. */
    private void numbers(Lie lie, SetOut.Stop stop) {
        Point a = at(stop.from());
        Point b = at(stop.to());
        if (stop.bends()) {
            double angle = frame.angle() + (lie == Lie.ACROSS ? 90 : 0);
            beside(a, angle, 0, words(lie, stop.from()));
            return;
        }
        double angle = a.angleTo(b);
        beside(a, angle, 1, words(lie, stop.from()));
        beside(b, angle, -1, words(lie, stop.to()));
        Point middle = Places.between(a, b, 0.5);
        List<Text> places = new ArrayList<>();
        for (int side : new int[] {90, -90}) {
            places.add(Text.level(
                    middle.polar(2 * unit, angle + side),
                    LETTERS * unit,
                    Anchor.MIDDLE_CENTRE,
                    stop.loop() + stop.number()));
        }
        labels.put(places, middle);
    }

    private String words(Lie lie, org.runbend.optimizer.job.Point p) {
        if (lie == Lie.ASLANT) {
            return tape.of(p.x()) + " / " + tape.of(p.y());
        }
        return tape.of(lie.stop(p));
    }

    /** A number along its line, on either side of it, to the inside of the run that begins or ends there. */
    private void beside(Point p, double angle, int inwards, String words) {
        double readable = FloorMarks.readable(angle);
        boolean turned = Math.abs(Math.cos(Math.toRadians(angle - readable)) - 1) > 0.5;
        List<Text> places = new ArrayList<>();
        for (int side : new int[] {1, -1}) {
            for (int way : inwards == 0 ? new int[] {1, -1} : new int[] {inwards, -inwards}) {
                boolean left = way > 0 != turned;
                Point at = p.polar(0.6 * unit * way, angle).polar(1.7 * unit * side, readable + 90);
                places.add(new Text(at, 1.9 * unit, readable, left ? Anchor.MIDDLE_LEFT : Anchor.MIDDLE_RIGHT, words));
            }
        }
        labels.put(places, p);
    }

    private void centre(SetOut.BendMark bend) {
        Point c = at(bend.centre());
        double d = 0.9 * unit;
        sheet.add(Layer.NOTE, new Segment(c.plus(-d, 0), c.plus(d, 0)));
        sheet.add(Layer.NOTE, new Segment(c.plus(0, -d), c.plus(0, d)));
        sheet.add(Layer.NOTE, new Circle(c, 0.7 * unit));
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
