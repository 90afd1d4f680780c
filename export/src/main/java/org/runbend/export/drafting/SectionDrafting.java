package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Circle;
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
import org.runbend.optimizer.plan.KitPlan;

/** Draws a cut through the floor across two runs, in true size: cover, board with grooves, what lies under it. */
public final class SectionDrafting {
    private static final double LETTERS = 2.4;
    /** Runs shown, and what is shown beyond them in spacings. */
    private static final double SHOWN = 2.2;

    private final SheetBuilder sheet;
    private final TapeText tape;
    private final double wide;
    private final double unit;
    private final List<String> words = new ArrayList<>();
    private final List<Double> heights = new ArrayList<>();

    private SectionDrafting(KitPlan plan, double unit) {
        sheet = new SheetBuilder("section through the floor");
        tape = new TapeText(plan.job());
        wide = SHOWN * plan.job().layout().spacing();
        this.unit = unit;
    }

    /** The cut at so many mm to a mm of paper; the job says its build-up and a cutter fits the groove. */
    public static Sheet draw(KitPlan plan, double unit) {
        return of(plan, unit).sheet.build();
    }

    /** What the numbers in the cut stand for. */
    public static List<String> layers(KitPlan plan) {
        List<String> words = of(plan, 1).words;
        return IntStream.range(0, words.size())
                .mapToObj(i -> (i + 1) + " " + words.get(i))
                .toList();
    }

    private static SectionDrafting of(KitPlan plan, double unit) {
        SectionDrafting drawing = new SectionDrafting(plan, unit);
        drawing.draw(
                plan.job(),
                plan.job().build().orElseThrow(),
                plan.channel().orElseThrow().size());
        return drawing;
    }

    private void draw(Job job, Job.Build build, ChannelSize groove) {
        double board = build.board().map(Job.RoutedBoard::thickness).orElse(groove.depth() + build.insulation());
        double under = build.board().isPresent() ? build.laidUnder() : 0;
        double top = build.coverThickness();
        if (top > 0) {
            layer(Layer.BOARD, 0, top, "cover: " + build.coverMaterial() + ", " + tape.beside(top));
        }
        grooved(job, groove, board);
        String what = build.board()
                .map(b -> b.board().name())
                .orElse("board with the groove (foam under the pipe " + tape.beside(build.insulation()) + ")");
        note(
                -board / 2,
                what + ", " + tape.beside(board) + "; groove " + tape.beside(groove.depth()) + " deep, "
                        + tape.beside(groove.width()) + " wide, " + tape.beside(groove.bendWidth()) + " at bends"
                        + build.board()
                                .map(b -> "; " + tape.beside(b.rest()) + " stay under it")
                                .orElse(""));
        if (under > 0) {
            layer(Layer.UNHEATED, -board - under, -board, "insulation, " + tape.beside(under));
        }
        numbers();
    }

    private void layer(Layer layer, double from, double to, String what) {
        sheet.add(layer, Path.rectangle(new Extent(0, from, wide, to)));
        note((from + to) / 2, what);
    }

    private void note(double height, String what) {
        words.add(what);
        heights.add(height);
    }

    /** The board with two grooves, open at the top, pipe in plates at their bottoms. */
    private void grooved(Job job, ChannelSize groove, double board) {
        double spacing = job.layout().spacing();
        double outer = job.pipe().product().outer();
        double half = groove.width() / 2;
        double first = (wide - spacing) / 2;
        PathBuilder edge = Path.from(new Point(0, 0));
        for (double x : new double[] {first, first + spacing}) {
            edge.lineTo(new Point(x - half, 0))
                    .lineTo(new Point(x - half, -groove.depth()))
                    .lineTo(new Point(x + half, -groove.depth()))
                    .lineTo(new Point(x + half, 0));
        }
        edge.lineTo(new Point(wide, 0)).lineTo(new Point(wide, -board)).lineTo(new Point(0, -board));
        sheet.add(Layer.FLOOR, edge.close());
        for (double x : new double[] {first, first + spacing}) {
            Point middle = new Point(x, -outer / 2);
            sheet.add(Layer.PIPE, new Circle(middle, outer / 2));
            sheet.add(
                    Layer.PIPE,
                    new Circle(middle, outer / 2 - job.pipe().product().wall()));
            if (!job.plates().products().isEmpty()) {
                plate(job, middle, outer / 2);
            }
        }
    }

    private void plate(Job job, Point middle, double radius) {
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

    private void numbers() {
        for (int i = 0; i < words.size(); i++) {
            Point at = new Point(-3.5 * unit, heights.get(i));
            sheet.add(Layer.NOTE, Text.level(at, LETTERS * unit, Anchor.MIDDLE_CENTRE, Integer.toString(i + 1)));
            sheet.add(Layer.DIMENSION, new Segment(new Point(-1.8 * unit, at.y()), new Point(4 * unit, at.y())));
        }
    }
}
