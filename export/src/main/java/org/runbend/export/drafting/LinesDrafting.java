package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
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
    /** Likewise off the ticks at the ends of a run that is shorter than the next. */
    private static final double ASIDE = 2.9;

    private static final double NARROW = 10;
    /** Where along a run its number may stand. */
    private static final double[] SHARES = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9};
    /** How far a line juts out beyond the floor, where its distance stands, mm of paper. */
    private static final double OUT = 3.4;
    /** From there to the box of its distance. */
    private static final double ON = 1.6;
    /** Between a distance and its box, and the height of that with a gap to the next. */
    private static final double FRAME = 0.5;

    private static final double STEP = LETTERS + 2 * FRAME + 0.6;

    /** Lines nearer to the base line or the square line are that line. */
    private static final double SAME = 0.05;

    private final SheetBuilder sheet;
    private final Labels labels;
    private final TapeText tape;
    private final Frame frame;
    private final double unit;
    private final List<Segment> snapped = new ArrayList<>();

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
        job.floor().keepOuts().forEach(labels::shunThing);
        DatumLines.draw(sheet, labels, unit, marks.datum());
        Span us = span(outline, true);
        Span vs = span(outline, false);
        for (Lie lie : List.of(Lie.ALONG, Lie.ACROSS, Lie.ASLANT)) {
            List<SetOut.ChalkLine> lines =
                    marks.lines().stream().filter(l -> l.lie() == lie).toList();
            straight(lines, us, vs);
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
        labels.keepWithin(outline);
        measures.number(marks.lines());
        for (SetOut.ChalkLine line : marks.lines()) {
            line.stops().forEach(this::number);
        }
        for (int i = 0; i < things.size(); i++) {
            String name = Wording.brief(job.floor().keepOuts().get(i).name());
            labels.putIn(
                    Labels.around(things.get(i), 0.8 * unit, LETTERS * unit, name),
                    FloorShapes.bare(job.floor().keepOuts().get(i)));
        }
        snapped.forEach(l -> labels.parted(l).forEach(part -> sheet.add(Layer.DIMENSION, part)));
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

    private void straight(List<SetOut.ChalkLine> lines, Span us, Span vs) {
        List<SetOut.ChalkLine> straight =
                lines.stream().filter(l -> l.lie() != Lie.ASLANT).toList();
        lines.stream().filter(l -> l.lie() == Lie.ASLANT).forEach(this::slanting);
        straight.forEach(l -> snap(l, us, vs));
        List<SetOut.ChalkLine> named =
                straight.stream().filter(l -> Math.abs(l.offset()) >= SAME).toList();
        if (named.isEmpty()) {
            return; // the base line and the square line are named by their ends
        }
        Segment first = line(named.get(0), us, vs);
        double angle = first.a().angleTo(first.b());
        boolean level = Math.abs(Math.cos(Math.toRadians(angle))) > 0.7;
        double widest = named.stream()
                .mapToDouble(l -> Text.roughWidth(tape.mark(l.offset()), LETTERS))
                .max()
                .orElse(0);
        boolean turned = !level && areClose(named, widest + 2 * FRAME + 1);
        double[] places = spread(named, level || turned ? STEP : widest + 2 * FRAME + 1);
        for (int i = 0; i < named.size(); i++) {
            SetOut.ChalkLine line = named.get(i);
            Segment whole = line(line, us, vs);
            double aside = (places[i] - line.offset()) * (line.lie() == Lie.ALONG ? 1 : -1);
            distance(whole.b(), angle, aside, level, turned, tape.mark(line.offset()));
            distance(whole.a(), angle + 180, -aside, level, turned, tape.mark(line.offset()));
        }
    }

    /** Where two bends meet aslant there is a place and no line. */
    private void slanting(SetOut.ChalkLine line) {
        SetOut.Stop stop = line.stops().get(0);
        if (!stop.bends()) {
            sheet.add(Layer.NOTE, new Segment(at(stop.from()), at(stop.to())));
        }
    }

    private void snap(SetOut.ChalkLine line, Span us, Span vs) {
        Segment whole = line(line, us, vs);
        snapped.add(whole);
        labels.bridge(whole);
    }

    private Segment line(SetOut.ChalkLine line, Span us, Span vs) {
        double out = OUT * unit;
        return line.lie() == Lie.ALONG
                ? new Segment(on(us.from - out, line.offset()), on(us.to + out, line.offset()))
                : new Segment(on(line.offset(), vs.from - out), on(line.offset(), vs.to + out));
    }

    /** Whether distances written side by side at the ends of lines would run into each other. */
    private boolean areClose(List<SetOut.ChalkLine> lines, double room) {
        double[] offsets =
                lines.stream().mapToDouble(SetOut.ChalkLine::offset).sorted().toArray();
        return IntStream.range(1, offsets.length).anyMatch(i -> offsets[i] - offsets[i - 1] < room * unit);
    }

    /** Where the distances of lines stand, no two nearer than so many mm of paper: those that are too near share the way out. */
    private double[] spread(List<SetOut.ChalkLine> lines, double step) {
        Integer[] order = IntStream.range(0, lines.size()).boxed().toArray(Integer[]::new);
        Arrays.sort(order, Comparator.comparingDouble(i -> lines.get(i).offset()));
        double[] own = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            own[i] = lines.get(order[i]).offset() - i * step * unit;
        }
        double[] level = Places.rising(own);
        double[] places = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            places[order[i]] = level[i] + i * step * unit;
        }
        return places;
    }

    /** The distance of a line at one of its ends, in a box beyond it; read from the right where upright lines are close. */
    private void distance(Point end, double away, double aside, boolean level, boolean turned, String words) {
        double angle = turned ? FloorMarks.readable(Math.IEEEremainder(away, 360)) : 0;
        Anchor anchor;
        if (turned || level) {
            anchor = Math.cos(Math.toRadians(away - angle)) > 0 ? Anchor.MIDDLE_LEFT : Anchor.MIDDLE_RIGHT;
        } else {
            anchor = Math.sin(Math.toRadians(away)) > 0 ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        }
        Point beside = end.polar(ON * unit, away).polar(aside, away + 90);
        sheet.add(Layer.DIMENSION, new Segment(end, beside));
        Text text = new Text(beside.polar(FRAME * unit, away), LETTERS * unit, angle, anchor, words);
        sheet.add(Layer.NOTE, text);
        Path frame = Path.polygon(Obstacles.Area.of(text, FRAME * unit).corners());
        sheet.add(Layer.NOTE, frame);
        labels.block(text);
        labels.block(frame.extent());
    }

    private void run(SetOut.Stop stop) {
        if (!stop.bends()) {
            Segment run = new Segment(at(stop.from()), at(stop.to()));
            sheet.add(Layer.PIPE, run);
            labels.shun(run);
            labels.fence(run);
        }
    }

    /** The number of a run beside it, about its middle. */
    private void number(SetOut.Stop stop) {
        if (stop.bends() || RunningMeasures.isShort(stop, unit)) {
            return; // a short one is named with its measures
        }
        Point a = at(stop.from());
        Point b = at(stop.to());
        String name = stop.loop() + stop.number();
        double angle = FloorMarks.readable(a.angleTo(b));
        List<Text> places = new ArrayList<>();
        for (double beside : a.distance(b) < NARROW * unit ? new double[] {BESIDE, ASIDE} : new double[] {BESIDE}) {
            for (double share : SHARES) {
                Point at = Places.between(a, b, share);
                for (int side : new int[] {90, -90}) {
                    Point off = at.polar(beside * unit, angle + side);
                    places.add(new Text(off, LETTERS * unit, angle, Anchor.MIDDLE_CENTRE, name));
                }
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
