package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;

/** Draws what was understood of a drawing, so that a person sees at a glance what was not. */
public final class SketchDrafting {
    private static final int MOST_LINES = 14;

    private final FloorSketch sketch;
    private final SheetBuilder sheet;
    private final double unit;

    private SketchDrafting(FloorSketch sketch) {
        this.sketch = sketch;
        sheet = new SheetBuilder("What was understood of " + sketch.drawing());
        unit = sketch.candidates().stream()
                .map(c -> c.contour().box())
                .reduce(sketch.outline().path().extent(), Extent::union)
                .grow(150)
                .mmPerPaperMm();
    }

    /** The picture. */
    public static Sheet draw(FloorSketch sketch) {
        SketchDrafting drafting = new SketchDrafting(sketch);
        drafting.draw();
        return drafting.sheet.build();
    }

    /** A picture of closed lines, each with the number that names it. */
    public static Sheet draw(String drawing, List<Candidate> candidates) {
        SheetBuilder sheet = new SheetBuilder("Closed lines of " + drawing);
        Extent box = candidates.stream()
                .map(c -> c.contour().box())
                .reduce(Extent::union)
                .orElseThrow();
        double unit = box.grow(150).mmPerPaperMm();
        candidates.forEach(c -> numbered(sheet, c, unit));
        List<String> lines = new ArrayList<>();
        lines.add("Closed lines of " + FloorReading.shown(drawing) + " that could be the floor");
        candidates.stream().limit(MOST_LINES).forEach(c -> lines.add(c.words()));
        Point at = new Point(box.minX(), box.minY() - 5 * unit);
        sheet.add(Layer.TITLE, new Paragraph(at, 2.2 * unit, lines));
        return sheet.build();
    }

    private static void numbered(SheetBuilder sheet, Candidate c, double unit) {
        sheet.add(Layer.BOARD, c.contour().path());
        Point corner = c.corner().plus((1.5 + 2.5 * (c.number() % 3)) * unit, 1.5 * unit);
        sheet.add(Layer.NOTE, Text.level(corner, 4 * unit, Anchor.BOTTOM_LEFT, Integer.toString(c.number())));
    }

    private void draw() {
        sketch.candidates().stream().limit(MOST_LINES).forEach(c -> numbered(sheet, c, unit));
        Path outline = sketch.outline().path();
        sheet.add(Layer.FLOOR, outline);
        for (Obstacle u : sketch.unheated()) {
            sheet.add(Layer.UNHEATED, u.contour().orElseThrow().path());
            sheet.add(Layer.NOTE, Text.level(u.centre(), 2.2 * unit, Anchor.MIDDLE_CENTRE, u.name()));
        }
        sketch.obstacles().forEach(this::obstacle);
        sketch.supports().forEach(s -> sheet.add(Layer.BOARD, new Segment(s.a(), s.b())));
        edgeNumbers(outline);
        for (FloorSketch.Mark m : sketch.marks()) {
            List<FloorSketch.Mark> same =
                    sketch.marks().stream().filter(o -> o.edge() == m.edge()).toList();
            mark(m, outline, (1.0 + same.indexOf(m)) / (1 + same.size()));
        }
        for (FloorSketch.Remark r : sketch.remarks()) {
            sheet.add(Layer.DIMENSION, Text.level(r.at(), 2.2 * unit, Anchor.MIDDLE_CENTRE, r.text()));
        }
        measures(outline.extent());
        words(sheet.extent());
    }

    private void obstacle(Obstacle o) {
        o.contour().ifPresent(c -> sheet.add(Layer.KEEP_OUT, c.path()));
        if (o.radius() > 0) {
            sheet.add(Layer.KEEP_OUT, new Circle(o.centre(), o.radius()));
        }
        if (o.contour().isEmpty()) {
            double arm = Math.max(1.5 * unit, o.radius());
            sheet.add(
                    Layer.KEEP_OUT,
                    new Segment(o.centre().plus(-arm, 0), o.centre().plus(arm, 0)));
            sheet.add(
                    Layer.KEEP_OUT,
                    new Segment(o.centre().plus(0, -arm), o.centre().plus(0, arm)));
        }
        boolean inside = o.contour()
                .map(c -> c.box().width() > 3 * Text.roughWidth(o.name(), unit))
                .orElse(false);
        Point at = inside ? o.centre() : o.centre().plus(Math.max(1.5 * unit, o.radius()) + 0.8 * unit, unit);
        if (!inside && o.contour().isPresent()) {
            at = new Point(
                    o.contour().get().box().maxX() + 0.8 * unit,
                    o.contour().get().box().maxY());
        }
        sheet.add(Layer.NOTE, Text.level(at, 2.2 * unit, inside ? Anchor.MIDDLE_CENTRE : Anchor.BOTTOM_LEFT, o.name()));
    }

    /** The number of each side that is long enough to hold it, within the outline. */
    private void edgeNumbers(Path outline) {
        List<Vertex> v = outline.vertices();
        for (int i = 0; i < outline.partCount(); i++) {
            Point end = outline.end(i);
            if (v.get(i).point().distance(end) < 5 * unit) {
                continue;
            }
            Point middle = Tidying.middle(v.get(i), end);
            double inward = v.get(i).point().angleTo(end) + 90;
            Point at = middle.polar(3 * unit, inward);
            sheet.add(Layer.DIMENSION, Text.level(at, 2.2 * unit, Anchor.MIDDLE_CENTRE, Integer.toString(i)));
        }
    }

    /** Outside its side, along it, readable from below or from the right. */
    private void mark(FloorSketch.Mark mark, Path outline, double share) {
        if (mark.edge() < 0) {
            sheet.add(Layer.NOTE, Text.level(mark.at(), 2.8 * unit, Anchor.MIDDLE_CENTRE, mark.text()));
            return;
        }
        Vertex from = outline.vertices().get(mark.edge());
        Point end = outline.end(mark.edge());
        double along = from.point().angleTo(end);
        boolean turned = along > 90 + 1e-9 || along <= -90 + 1e-9;
        double readable = turned ? along + 180 : along;
        double off = from.point().distance(end) * (share - 0.5);
        Point at = Tidying.middle(from, end).polar(off, along).polar(2 * unit, along - 90);
        Anchor anchor = turned ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        sheet.add(Layer.NOTE, new Text(at, 2.8 * unit, readable, anchor, mark.text()));
    }

    private void measures(Extent box) {
        double away = (sketch.marks().isEmpty() ? 8 : 12) * unit;
        sheet.add(
                Layer.DIMENSION,
                Dimension.measured(
                        new Point(box.minX(), box.minY()), new Point(box.maxX(), box.minY()), -away, 2.5 * unit));
        sheet.add(
                Layer.DIMENSION,
                Dimension.measured(
                        new Point(box.minX(), box.minY()), new Point(box.minX(), box.maxY()), away, 2.5 * unit));
        Point first = sketch.outline().path().vertices().get(0).point();
        sheet.add(Layer.NOTE, new Circle(first, 0.8 * unit));
    }

    private void words(Extent box) {
        List<String> lines = new ArrayList<>();
        lines.add("What was understood of " + FloorReading.shown(sketch.drawing()) + ", " + sketch.form()
                + ", seen from above; sides are numbered, side 0 begins at the circle");
        sketch.candidates().stream().limit(MOST_LINES).forEach(c -> lines.add("or, dashed: " + c.words()));
        sketch.guesses().forEach(g -> lines.add("guess: " + g));
        sketch.leftOut().forEach(l -> lines.add("left out: " + FloorReading.shown(l)));
        List<String> shown = lines.size() <= MOST_LINES ? lines : new ArrayList<>(lines.subList(0, MOST_LINES - 1));
        if (shown.size() < lines.size()) {
            shown.add("and " + (lines.size() - shown.size()) + " lines more, see the job file");
        }
        Point at = new Point(box.minX(), box.minY() - 5 * unit);
        sheet.add(Layer.TITLE, new Paragraph(at, 2.2 * unit, shown));
    }
}
