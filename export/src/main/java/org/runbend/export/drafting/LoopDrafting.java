package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.runbend.catalog.source.Plain;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.plan.LoopView;

/**
 * Draws a loop on its lattice: every place and link, corners too tight for a bend, what was left out and why.
 *
 * <p>A dot is a place served; a ring one left out; a cross one out of reach; a small square one on unheated floor; a short
 * bar across a corner says that no bend fits there.
 */
public final class LoopDrafting {
    private static final int LINE = 100;

    /** The drawing of a loop on its lattice. */
    public Sheet draw(LoopView view) {
        Extent floor = TrueArcs.of(Places.all(view.job().floor().outline())).extent();
        double unit = Places.unit(floor);
        SheetBuilder sheet = new SheetBuilder(view.job().title());
        view.links().forEach(l -> sheet.add(Layer.DIMENSION, new Segment(Places.at(l.a()), Places.at(l.b()))));
        view.tightCorners().forEach(c -> sheet.add(Layer.SCREW, new Segment(Places.at(c.legA()), Places.at(c.legB()))));
        Labels labels = new Labels(sheet);
        for (Breakdown b : view.breakdowns()) {
            Path pipe = LoopMarks.path(b.elements());
            sheet.add(Layer.PIPE, pipe);
            pipe.parts().forEach(labels::shun);
        }
        FloorMarks floorMarks = new FloorMarks(sheet, labels, unit);
        floorMarks.keepClear(view.job().floor());
        floorMarks.draw(view.job().floor());
        new WishMarks(sheet, labels, unit).draw(view.job());
        view.nodes().forEach(n -> place(sheet, n, unit));
        sheet.add(
                Layer.NOTE, new Paragraph(new Point(floor.minX(), floor.minY() - 12 * unit), 2.5 * unit, words(view)));
        return sheet.build();
    }

    private static void place(SheetBuilder sheet, LoopView.Node node, double unit) {
        Point at = Places.at(node.at());
        double r = 0.9 * unit;
        switch (node.state()) {
            case SERVED -> sheet.add(Layer.NOTE, new Circle(at, 0.3 * unit));
            case LEFT_OUT -> sheet.add(Layer.NOTE, new Circle(at, 1.6 * unit));
            case OUT_OF_REACH -> {
                sheet.add(Layer.NOTE, new Segment(at.plus(-r, -r), at.plus(r, r)));
                sheet.add(Layer.NOTE, new Segment(at.plus(-r, r), at.plus(r, -r)));
            }
            case UNHEATED ->
                sheet.add(Layer.NOTE, Path.rectangle(new Extent(at.x() - r, at.y() - r, at.x() + r, at.y() + r)));
        }
    }

    /** What the picture says in words, a line each. */
    public static List<String> words(LoopView view) {
        List<String> lines = new ArrayList<>();
        lines.addAll(broken(view.job().title() + ", order " + view.job().order() + ", seen from above"));
        if (view.job().hasOwnLoop()) {
            lines.add("the loop as it was drawn: "
                    + BendCount.ofAll(view.breakdowns()).words() + ", every rule kept");
            return lines;
        }
        if (view.breakdowns().size() > 1) {
            lines.add(view.breakdowns().size() + " loops, their corners and left-out places summed up");
        }
        lines.add(BendCount.ofAll(view.breakdowns()).words() + ", left out " + view.leftOut());
        lines.add("corners of the closed loop, the port's included: " + view.turns()
                + (view.turnBound().isEmpty() && view.objectiveBound().isPresent() ? "" : bound(view.turnBound())));
        lines.add(objective(view));
        for (LoopView.Pair pair : view.pairs()) {
            lines.add("found: " + pair.leftOut() + " left out with " + pair.turns() + " corners");
        }
        lines.add("dot: " + view.count(LoopView.State.SERVED) + " places served; ring: "
                + view.count(LoopView.State.LEFT_OUT) + " left out");
        lines.add("cross: " + view.count(LoopView.State.OUT_OF_REACH)
                + " out of reach, no closed loop can go there and back; square: "
                + view.count(LoopView.State.UNHEATED) + " on unheated floor");
        lines.add(
                "bar across a corner: " + view.tightCorners().size() + " bends that would come too near to something");
        view.bareFloor().forEach(b -> lines.addAll(broken(b.sentence())));
        return lines;
    }

    private static String objective(LoopView view) {
        PlacePrice price = view.job().layout().leftOutPrice();
        String pieces = price.pricesPieces()
                ? ", the ends of straight pieces that no plate reaches at "
                        + Plain.number(price.inTurns(price.pieceEnd())) + " each"
                : "";
        return "corners and " + Plain.number(price.inTurns()) + " for each place left out" + pieces + ": "
                + Plain.number(price.inTurns(view.objective()))
                + (view.objectiveBound().isEmpty()
                        ? " (not proved)"
                        : " (proved: not under "
                                + Plain.number(
                                        price.inTurns(view.objectiveBound().getAsInt())) + ")");
    }

    /** A sentence in lines that are no longer than the others. */
    private static List<String> broken(String sentence) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : sentence.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > LINE) {
                lines.add(line.toString());
                line = new StringBuilder("   ");
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private static String bound(OptionalInt bound) {
        return bound.isPresent() ? " (proved: not under " + bound.getAsInt() + ")" : " (not proved)";
    }
}
