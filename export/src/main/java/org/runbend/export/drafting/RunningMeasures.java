package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.setout.Frame;
import org.runbend.optimizer.setout.Lie;
import org.runbend.optimizer.setout.SetOut;

/**
 * Writes how far from the other line runs begin and end. Where ends lie in a row over several lines, a dashed line joins
 * them and the number that they share stands once, or again after so much paper.
 */
final class RunningMeasures {
    private static final double LETTERS = 1.9;
    private static final double TICK = 1;
    /** From a mark to the number beside it. */
    private static final double OFF = 1.7;

    /** A row is not drawn over a wider gap, and its number comes again after so much, mm of paper. */
    private static final double WIDEST = 32;

    private static final double AGAIN = 75;
    private static final double DASH = 1.2;
    private static final double SAME = 0.05;
    /** A run that is shorter has one text for both its ends, mm of paper. */
    private static final double SHORT = 4;
    /** Room for the name of a run between the numbers at its ends, mm of paper. */
    private static final double NAME = 14;

    private final SheetBuilder sheet;
    private final Labels labels;
    private final TapeText tape;
    private final Frame frame;
    private final double unit;

    RunningMeasures(SheetBuilder sheet, Labels labels, TapeText tape, Frame frame, double unit) {
        this.sheet = sheet;
        this.labels = labels;
        this.tape = tape;
        this.frame = frame;
        this.unit = unit;
    }

    /**
     * An end of a run, or where two bends meet.
     *
     * @param stop its distance from the other line
     * @param offset that of its line
     * @param inwards 1 where the run lies on the side of greater stops, -1 on the other, 0 where there is none
     * @param roomy whether both numbers and the name of the run have room beside it
     */
    private record Mark(double stop, double offset, int inwards, boolean roomy) {}

    /** Ticks on lines that lie along or across, and what joins those of a row. */
    void mark(List<SetOut.ChalkLine> lines) {
        for (Lie lie : List.of(Lie.ALONG, Lie.ACROSS)) {
            List<SetOut.ChalkLine> like = like(lines, lie);
            like.forEach(l -> l.stops().forEach(s -> ticks(lie, l, s)));
            rows(like).forEach(r -> join(lie, r));
        }
    }

    private void ticks(Lie lie, SetOut.ChalkLine line, SetOut.Stop stop) {
        tick(at(lie, lie.stop(stop.from()), line.offset()), angle(lie));
        if (!stop.bends()) {
            tick(at(lie, lie.stop(stop.to()), line.offset()), angle(lie));
        }
    }

    /** Whether a run is too short on paper for a number at each of its ends. */
    static boolean isShort(SetOut.Stop stop, double unit) {
        return !stop.bends()
                && Math.hypot(
                                stop.to().x() - stop.from().x(),
                                stop.to().y() - stop.from().y())
                        < SHORT * unit;
    }

    private static List<SetOut.ChalkLine> like(List<SetOut.ChalkLine> lines, Lie lie) {
        return lines.stream().filter(l -> l.lie() == lie).toList();
    }

    /** The numbers beside them; slanting lines say both measures of each end. */
    void number(List<SetOut.ChalkLine> lines) {
        for (Lie lie : List.of(Lie.ALONG, Lie.ACROSS)) {
            rows(like(lines, lie)).stream()
                    .sorted(Comparator.comparingInt(r -> -r.size()))
                    .forEach(r -> parts(r).forEach(p -> number(lie, p)));
            like(lines, lie)
                    .forEach(l ->
                            l.stops().stream().filter(s -> isShort(s, unit)).forEach(s -> whole(lie, s)));
        }
        lines.stream().filter(l -> l.lie() == Lie.ASLANT).forEach(this::slanting);
    }

    /** A short run: its name, where it begins and where it ends. */
    private void whole(Lie lie, SetOut.Stop stop) {
        String words = stop.loop() + stop.number() + " " + tape.mark(lie.stop(stop.from())) + " to "
                + tape.mark(lie.stop(stop.to()));
        Point a = Places.at(frame.onFloor(stop.from().x(), stop.from().y()));
        Point b = Places.at(frame.onFloor(stop.to().x(), stop.to().y()));
        Point middle = Places.between(a, b, 0.5);
        double line = angle(lie);
        List<Text> places = new ArrayList<>();
        for (int way : new int[] {1, -1}) {
            for (int side : new int[] {1, -1}) {
                Point at = middle.polar(side * OFF * unit, line + 90);
                places.add(text(at.polar(way * (a.distance(b) / 2 + OFF * unit), line), line, way, words));
                places.add(text(at, line, way, words));
            }
        }
        labels.put(places, middle);
    }

    private List<Mark> marks(SetOut.ChalkLine line) {
        List<Mark> marks = new ArrayList<>();
        for (SetOut.Stop s : line.stops()) {
            if (isShort(s, unit)) {
                continue;
            }
            double a = line.lie().stop(s.from());
            double b = line.lie().stop(s.to());
            boolean roomy =
                    Math.abs(a - b) > Text.roughWidth(tape.mark(a) + tape.mark(b), LETTERS * unit) + NAME * unit;
            marks.add(new Mark(Math.min(a, b), line.offset(), s.bends() ? 0 : 1, roomy));
            if (!s.bends()) {
                marks.add(new Mark(Math.max(a, b), line.offset(), -1, roomy));
            }
        }
        return marks;
    }

    /** Marks at one stop, line by line, parted where another run passes between them or the gap is wide. */
    private List<List<Mark>> rows(List<SetOut.ChalkLine> lines) {
        List<Mark> all = lines.stream()
                .flatMap(l -> marks(l).stream())
                .sorted(Comparator.comparingDouble((Mark m) -> Math.rint(m.stop / SAME))
                        .thenComparingDouble(Mark::offset))
                .toList();
        List<List<Mark>> rows = new ArrayList<>();
        for (Mark mark : all) {
            List<Mark> last = rows.isEmpty() ? List.of() : rows.get(rows.size() - 1);
            if (last.isEmpty() || !isNext(last.get(last.size() - 1), mark, lines)) {
                last = new ArrayList<>();
                rows.add(last);
            }
            last.add(mark);
        }
        return rows;
    }

    private boolean isNext(Mark before, Mark mark, List<SetOut.ChalkLine> lines) {
        return Math.abs(mark.stop - before.stop) < SAME
                && mark.offset - before.offset < WIDEST * unit
                && lines.stream()
                        .filter(l -> l.offset() > before.offset + SAME && l.offset() < mark.offset - SAME)
                        .noneMatch(l -> isPassed(l, mark.stop));
    }

    private static boolean isPassed(SetOut.ChalkLine line, double stop) {
        return line.stops().stream().anyMatch(s -> {
            double a = line.lie().stop(s.from());
            double b = line.lie().stop(s.to());
            return Math.min(a, b) < stop - SAME && stop + SAME < Math.max(a, b);
        });
    }

    private List<List<Mark>> parts(List<Mark> row) {
        double span = row.get(row.size() - 1).offset - row.get(0).offset;
        int count = (int) Math.min(row.size(), Math.max(1, Math.ceil(span / (AGAIN * unit))));
        List<List<Mark>> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            parts.add(row.subList(i * row.size() / count, (i + 1) * row.size() / count));
        }
        return parts;
    }

    private void tick(Point p, double angle) {
        sheet.add(Layer.NOTE, new Segment(p.polar(TICK * unit, angle + 90), p.polar(-TICK * unit, angle + 90)));
        labels.shun(Extent.at(p).grow(TICK * unit));
    }

    /** A dashed line from the first mark of a row to its last. */
    private void join(Lie lie, List<Mark> row) {
        Point a = at(lie, row.get(0).stop, row.get(0).offset);
        Point b = at(lie, row.get(row.size() - 1).stop, row.get(row.size() - 1).offset);
        double length = a.distance(b);
        if (length < DASH * unit) {
            return;
        }
        labels.shun(new Segment(a, b));
        int dashes = Math.max(1, (int) Math.round(length / (2 * DASH * unit)));
        for (int i = 0; i < dashes; i++) {
            sheet.add(
                    Layer.NOTE,
                    new Segment(Places.between(a, b, (i + 0.25) / dashes), Places.between(a, b, (i + 0.75) / dashes)));
        }
    }

    /** Between two marks of the row, the middle ones first, else beside one of them. */
    private void number(Lie lie, List<Mark> row) {
        int middle = (row.size() - 1) / 2;
        List<Text> places = new ArrayList<>();
        for (int i : fromMiddle(row.size() - 1)) {
            Mark a = row.get(i);
            double between = (a.offset + row.get(i + 1).offset) / 2;
            for (int way : ways(a)) {
                places.add(text(lie, a, between - a.offset, way));
            }
        }
        for (int i : fromMiddle(row.size())) {
            Mark mark = row.get(i);
            for (int way : ways(mark)) {
                for (int side : new int[] {1, -1}) {
                    places.add(text(lie, mark, side * OFF * unit, way));
                }
            }
        }
        Mark led = row.get(middle);
        labels.put(places, at(lie, led.stop, led.offset));
    }

    private static int[] ways(Mark mark) {
        int first = mark.inwards == 0 ? 1 : mark.roomy ? mark.inwards : -mark.inwards;
        return new int[] {first, -first};
    }

    /** Indexes below a count, from the middle one outwards. */
    private static List<Integer> fromMiddle(int count) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingInt(i -> Math.abs(2 * i + 1 - count)));
        return order;
    }

    /** The number beside a mark, read along its line: so far across from it, towards greater stops or smaller ones. */
    private Text text(Lie lie, Mark mark, double across, int way) {
        Point p = at(lie, mark.stop + way * OFF * unit, mark.offset + across);
        return text(p, angle(lie), way, tape.mark(mark.stop));
    }

    /** Words read along a line, that go on from a place the line's way (1) or against it (-1). */
    private Text text(Point p, double line, int way, String words) {
        double readable = FloorMarks.readable(line);
        boolean turned = Math.abs(Math.cos(Math.toRadians(line - readable)) - 1) > 0.5;
        Anchor anchor = way > 0 != turned ? Anchor.MIDDLE_LEFT : Anchor.MIDDLE_RIGHT;
        return new Text(p, LETTERS * unit, readable, anchor, words);
    }

    private void slanting(SetOut.ChalkLine line) {
        for (SetOut.Stop stop : line.stops()) {
            Point a = Places.at(frame.onFloor(stop.from().x(), stop.from().y()));
            Point b = Places.at(frame.onFloor(stop.to().x(), stop.to().y()));
            if (stop.bends()) {
                tick(a, frame.angle());
                both(a, frame.angle(), stop.from());
            } else if (isShort(stop, unit)) {
                tick(a, a.angleTo(b));
                tick(b, a.angleTo(b));
                both(
                        Places.between(a, b, 0.5),
                        a.angleTo(b),
                        stop.loop() + stop.number() + " " + both(stop.from()) + " to " + both(stop.to()));
            } else {
                tick(a, a.angleTo(b));
                tick(b, a.angleTo(b));
                both(a, a.angleTo(b), stop.from());
                both(b, b.angleTo(a), stop.to());
            }
        }
    }

    private void both(Point p, double angle, org.runbend.optimizer.job.Point measures) {
        both(p, angle, both(measures));
    }

    /** Both measures of a place. */
    private String both(org.runbend.optimizer.job.Point measures) {
        return tape.mark(measures.x()) + "/" + tape.mark(measures.y());
    }

    private void both(Point p, double angle, String words) {
        double readable = FloorMarks.readable(angle);
        List<Text> places = new ArrayList<>();
        for (int way : new int[] {1, -1}) {
            for (int side : new int[] {1, -1}) {
                Point at = p.polar(OFF * unit * way, angle).polar(OFF * unit * side, readable + 90);
                places.add(text(at, angle, way, words));
            }
        }
        labels.put(places, p);
    }

    private double angle(Lie lie) {
        return frame.angle() + (lie == Lie.ACROSS ? 90 : 0);
    }

    private Point at(Lie lie, double stop, double offset) {
        return Places.at(lie == Lie.ALONG ? frame.onFloor(stop, offset) : frame.onFloor(offset, stop));
    }
}
