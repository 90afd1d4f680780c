package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.PathBuilder;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.HoleTurn;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Draws cuts through the floor in true size: cover, board with grooves, what lies under it. The top of the board is at height
 * 0. One cut goes across two runs, one across a bend, one along the pipe where it turns down into its hole.
 */
public final class SectionDrafting {
    private static final double LETTERS = 2.4;
    private static final double DIGITS = 2.1;
    /** Runs shown, and what is shown beyond them in spacings. */
    private static final double SHOWN = 2.2;

    /** A cut across a bend is so many grooves wide. */
    private static final double BEND = 4;

    /** Between two cuts side by side, mm of paper; a measure stands there. */
    private static final double BETWEEN = 16;

    /** Pipe shown beyond the slot, mm. */
    private static final double BEYOND = 35;

    private final SheetBuilder sheet;
    private final TapeText tape;
    private final Job job;
    private final ChannelSize groove;
    private final double board;
    private final double under;
    private final double top;
    private final double unit;
    private final List<String> words = new ArrayList<>();
    private final List<Double> heights = new ArrayList<>();

    private SectionDrafting(KitPlan plan, String title, double unit) {
        job = plan.job();
        Job.Build build = job.build().orElseThrow();
        sheet = new SheetBuilder(title);
        tape = new TapeText(job);
        groove = plan.channel().orElseThrow().size();
        board = HoleTurn.boardThickness(job, build);
        under = build.board().isPresent() ? job.insulationLaid(build) : 0;
        top = build.coverThickness();
        this.unit = unit;
        name(build);
    }

    /** The cut across two runs at so many mm to a mm of paper; the job says its build-up and a cutter fits the groove. */
    public static Sheet draw(KitPlan plan, double unit) {
        SectionDrafting drawing = new SectionDrafting(plan, "section across two runs", unit);
        drawing.runs();
        drawing.numbers();
        return drawing.sheet.build();
    }

    /** The cut across a bend, and right of it the one along the pipe at a hole, where it turns down into one. */
    public static Sheet drawBendAndHole(KitPlan plan, double unit) {
        Optional<HoleTurn> turn = HoleTurn.of(plan.job());
        boolean up = HoleTurn.goesUp(plan.job());
        SectionDrafting drawing = new SectionDrafting(
                plan, "section across a bend" + (turn.isPresent() || up ? " and along the pipe at a hole" : ""), unit);
        double right = drawing.bend();
        turn.ifPresent(t -> drawing.hole(t, right + BETWEEN * unit));
        if (up) {
            drawing.holeInCover(right + BETWEEN * unit);
        }
        drawing.numbers();
        return drawing.sheet.build();
    }

    /** What the numbers in the cuts stand for. */
    public static List<String> layers(KitPlan plan) {
        List<String> words = new SectionDrafting(plan, "layers", 1).words;
        return IntStream.range(0, words.size())
                .mapToObj(i -> (i + 1) + " " + words.get(i))
                .toList();
    }

    private void name(Job.Build build) {
        if (top > 0) {
            note(top / 2, "cover: " + build.coverName(job.catalog()) + ", " + tape.fine(top));
        }
        String what = build.board()
                .map(b -> b.board().name())
                .orElse("what takes the groove (" + tape.fine(groove.depth()) + ") on insulation ("
                        + tape.fine(job.insulationLaid(build)) + "), together");
        note(
                -board / 2,
                what + ", " + tape.fine(board) + "; groove " + tape.fine(groove.depth()) + " deep, "
                        + tape.fine(groove.width()) + " wide, " + tape.fine(groove.bendWidth()) + " at bends"
                        + build.board()
                                .map(b -> "; " + tape.fine(b.rest()) + " stay under it")
                                .orElse(""));
        if (under > 0) {
            note(-board - under / 2, "insulation, " + tape.fine(under));
        }
    }

    private void note(double height, String what) {
        words.add(what);
        heights.add(height);
    }

    private void runs() {
        double spacing = job.layout().spacing();
        double wide = SHOWN * spacing;
        double first = (wide - spacing) / 2;
        List<Double> middles = List.of(first, first + spacing);
        layers(0, wide);
        grooves(0, wide, middles, groove.width());
        for (double x : middles) {
            pipe(new Point(x, -outer() / 2));
            if (!job.plates().products().isEmpty()) {
                plate(new Point(x, -outer() / 2), outer() / 2, wide);
            }
        }
    }

    /** Its right edge. */
    private double bend() {
        double wide = BEND * groove.bendWidth();
        double half = groove.bendWidth() / 2;
        layers(0, wide);
        grooves(0, wide, List.of(wide / 2), groove.bendWidth());
        pipe(new Point(wide / 2, -outer() / 2));
        // digits without room stand beyond the left edge, away from the depth at the right
        measure(new Point(wide / 2 + half, 0), new Point(wide / 2 - half, 0), -top - 6 * unit, groove.bendWidth());
        measure(new Point(wide, -groove.depth()), new Point(wide, 0), -6 * unit, groove.depth());
        return wide;
    }

    /** Cover and what lies under the board, from one place to another. */
    private void layers(double from, double to) {
        cover(from, to);
        insulation(from, to);
    }

    private void cover(double from, double to) {
        if (top > 0) {
            sheet.add(Layer.BOARD, Path.rectangle(new Extent(from, 0, to, top)));
        }
    }

    private void insulation(double from, double to) {
        if (under > 0) {
            sheet.add(Layer.UNHEATED, Path.rectangle(new Extent(from, -board - under, to, -board)));
        }
    }

    /** The board with grooves, open at the top. */
    private void grooves(double from, double to, List<Double> middles, double width) {
        double half = width / 2;
        PathBuilder edge = Path.from(new Point(from, 0));
        for (double x : middles) {
            edge.lineTo(new Point(x - half, 0))
                    .lineTo(new Point(x - half, -groove.depth()))
                    .lineTo(new Point(x + half, -groove.depth()))
                    .lineTo(new Point(x + half, 0));
        }
        edge.lineTo(new Point(to, 0)).lineTo(new Point(to, -board)).lineTo(new Point(from, -board));
        sheet.add(Layer.FLOOR, edge.close());
    }

    private double outer() {
        return job.pipe().product().outer();
    }

    private void pipe(Point middle) {
        sheet.add(Layer.PIPE, new Circle(middle, outer() / 2));
        sheet.add(
                Layer.PIPE,
                new Circle(middle, outer() / 2 - job.pipe().product().wall()));
    }

    private void plate(Point middle, double radius, double wide) {
        double side = job.plates().products().get(0).width()
                / job.plates().products().get(0).grooves()
                / 2;
        double reach = Math.min(side, wide / 2);
        sheet.add(Layer.PLATE, new Segment(new Point(middle.x() - reach, 0), new Point(middle.x() - radius, 0)));
        sheet.add(Layer.PLATE, new Segment(new Point(middle.x() + radius, 0), new Point(middle.x() + reach, 0)));
        sheet.add(Layer.PLATE, new Segment(new Point(middle.x() - radius, 0), new Point(middle.x() - radius, -radius)));
        sheet.add(Layer.PLATE, new Segment(new Point(middle.x() + radius, 0), new Point(middle.x() + radius, -radius)));
        sheet.add(Layer.PLATE, new Arc(middle, radius, 180, 180));
    }

    /** Along the pipe, which comes from the right and goes down at the hole's axis. */
    private void hole(HoleTurn turn, double left) {
        double half = groove.bendWidth() / 2;
        double pocket = Math.max(half, groove.pad() / 2);
        double axis = left + pocket + half;
        double slot = axis + turn.begin() + outer() / 2;
        double end = slot + BEYOND;
        double through = axis + turn.through();
        cover(left, end);
        insulation(left, axis - half);
        insulation(through, end);
        sheet.add(
                Layer.FLOOR,
                Path.from(new Point(left, 0))
                        .lineTo(new Point(axis - pocket, 0))
                        .lineTo(new Point(axis - pocket, -groove.depth()))
                        .lineTo(new Point(axis - half, -groove.depth()))
                        .lineTo(new Point(axis - half, -board))
                        .lineTo(new Point(left, -board))
                        .close());
        sheet.add(
                Layer.FLOOR,
                Path.from(new Point(end, -groove.depth()))
                        .lineTo(new Point(slot, -groove.depth()))
                        .lineTo(new Point(through, -board))
                        .lineTo(new Point(end, -board))
                        .close());
        turned(turn, axis, end);
        double deep = -board - under;
        sheet.add(Layer.DIMENSION, new Segment(new Point(axis, top + 3 * unit), new Point(axis, deep - 4 * unit)));
        measure(new Point(axis, 0), new Point(slot, 0), top + 11 * unit, turn.begin() + outer() / 2);
        measure(new Point(axis, 0), new Point(through, 0), top + 6 * unit, turn.throughTold());
        if (groove.pad() > 0) {
            // its right line is broken where the digits of the other two may stand
            double over = top + 14 * unit;
            measure(new Point(axis - pocket, over), new Point(axis + pocket, over), 2 * unit, groove.pad());
            upright(axis - pocket, over);
            upright(axis + pocket, top + 5 * unit);
        }
        measure(new Point(end, deep), new Point(end, 0), -6 * unit, board + under);
    }

    /** Along the pipe, which comes from the right and goes up through the cover at the hole's axis. */
    private void holeInCover(double left) {
        double half = groove.bendWidth() / 2;
        double pocket = Math.max(half, groove.pad() / 2);
        double axis = left + pocket + half;
        double beyond = HoleTurn.beyond(job);
        double begin = axis + HoleTurn.beginOf(job);
        double slot = axis + job.slotLength();
        double end = slot + BEYOND;
        cover(left, axis - beyond);
        cover(slot, end);
        insulation(left, end);
        sheet.add(
                Layer.FLOOR,
                Path.from(new Point(left, 0))
                        .lineTo(new Point(axis - pocket, 0))
                        .lineTo(new Point(axis - pocket, -groove.depth()))
                        .lineTo(new Point(end, -groove.depth()))
                        .lineTo(new Point(end, -board))
                        .lineTo(new Point(left, -board))
                        .close());
        double turn = job.turnRadius();
        Point middle = new Point(begin, turn - outer() / 2);
        double angle = Math.toDegrees(Math.acos(1 - Math.min(turn, top + outer()) / turn));
        for (double radius : new double[] {turn - outer() / 2, turn + outer() / 2}) {
            double y = middle.y() - radius;
            sheet.add(Layer.PIPE, new Segment(new Point(end, y), new Point(begin, y)));
            sheet.add(Layer.PIPE, new Arc(middle, radius, 270 - angle, angle));
        }
        double deep = -board - under;
        sheet.add(
                Layer.DIMENSION,
                new Segment(new Point(axis, top + outer() + 3 * unit), new Point(axis, deep - 2 * unit)));
        measure(new Point(axis, 0), new Point(slot, 0), top + outer() + 8 * unit, job.slotLength());
        measure(new Point(axis - beyond, 0), new Point(axis, 0), top + outer() + 8 * unit, beyond);
        measure(new Point(end, deep), new Point(end, top), -6 * unit, top + board + under);
    }

    /** The pipe's two edges: straight, then on circles about one middle until the pipe has left the floor. */
    private void turned(HoleTurn turn, double axis, double end) {
        Point middle = new Point(axis + turn.begin(), -outer() / 2 - turn.radius());
        double low = Math.min(turn.radius(), board + under + outer() / 2);
        double angle = Math.toDegrees(Math.acos(1 - low / turn.radius()));
        for (double radius : new double[] {turn.radius() - outer() / 2, turn.radius() + outer() / 2}) {
            sheet.add(
                    Layer.PIPE,
                    new Segment(new Point(end, middle.y() + radius), new Point(middle.x(), middle.y() + radius)));
            sheet.add(Layer.PIPE, new Arc(middle, radius, 90, angle));
        }
    }

    private void measure(Point a, Point b, double offset, double size) {
        sheet.add(Layer.DIMENSION, new Dimension(a, b, offset, DIGITS * unit, tape.fine(size)));
    }

    private void upright(double x, double to) {
        sheet.add(Layer.DIMENSION, new Segment(new Point(x, 0.5 * DIGITS * unit), new Point(x, to)));
    }

    private void numbers() {
        for (int i = 0; i < words.size(); i++) {
            Point at = new Point(-3.5 * unit, heights.get(i));
            sheet.add(Layer.NOTE, Text.level(at, LETTERS * unit, Anchor.MIDDLE_CENTRE, Integer.toString(i + 1)));
            sheet.add(Layer.DIMENSION, new Segment(new Point(-1.8 * unit, at.y()), new Point(4 * unit, at.y())));
        }
    }
}
