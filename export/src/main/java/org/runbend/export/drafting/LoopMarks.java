package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.runbend.export.data.CutList;
import org.runbend.export.data.RunNames;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.PathBuilder;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ToolPaths;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlatePiece;

/** Draws pipe and plates: one path a loop, its direction of flow, the numbers of its runs, what it left out. */
final class LoopMarks {
    /** Where along a plate its name may stand. */
    private static final double[] ON_PLATE = {0.5, 0.3, 0.7, 0.15, 0.85};

    private final SheetBuilder sheet;
    private final Labels labels;
    private final double unit;

    LoopMarks(SheetBuilder sheet, Labels labels, double unit) {
        this.sheet = sheet;
        this.labels = labels;
        this.unit = unit;
    }

    void draw(KitPlan plan, GrooveForm form) {
        for (PlatePiece piece : plan.plates().pieces()) {
            Path body = body(plan, piece);
            sheet.add(Layer.PLATE, body);
            labels.shunArea(body.vertices().stream().map(Vertex::point).toList());
        }
        plan.channel().ifPresent(c -> groove(plan, c, form));
        for (KitPlan.LoopPlan loop : plan.loops()) {
            Path pipe = path(loop.breakdown().elements());
            sheet.add(Layer.PIPE, pipe);
            pipe.parts().forEach(labels::shun);
            pipe.parts().forEach(labels::fence);
            loop.bare().forEach(p -> bare(Places.at(p)));
        }
        for (KitPlan.LoopPlan loop : plan.loops()) {
            for (boolean start : new boolean[] {true, false}) {
                labels.keepLeadersOff(end(loop.breakdown().elements(), start));
                labels.keepNamesOff(end(loop.breakdown().elements(), start));
            }
        }
    }

    /** Where flow and return of each loop come onto the floor. */
    void nameEnds(KitPlan plan) {
        plan.loops().forEach(l -> ends(l.name(), l.breakdown().elements()));
    }

    private static Point end(List<Element> elements, boolean start) {
        return Places.at(
                start
                        ? elements.get(0).from()
                        : elements.get(elements.size() - 1).to());
    }

    /** Numbers come last: they give way to every other text. Where there are several loops they say whose run it is. */
    void numberRuns(KitPlan plan) {
        plan.loops().stream().flatMap(l -> l.breakdown().elements().stream()).forEach(e -> {
            if (e instanceof Element.Run run) {
                flow(run);
            }
        });
        for (KitPlan.LoopPlan loop : plan.loops()) {
            String name = plan.loops().size() > 1 ? loop.name() : "";
            List<Element> elements = loop.breakdown().elements();
            for (int i = 0; i < elements.size(); i++) {
                if (elements.get(i) instanceof Element.Run run) {
                    number(run, name + RunNames.number(elements, i));
                }
            }
        }
    }

    /** One open path through the elements, with true arcs. */
    static Path path(List<Element> elements) {
        PathBuilder path = Path.from(Places.at(elements.get(0).from()));
        for (Element e : elements) {
            if (e instanceof Element.Bend bend) {
                path.arcTo(Places.at(bend.to()), bend.turn());
            } else {
                path.lineTo(Places.at(e.to()));
            }
        }
        return path.open();
    }

    private void groove(KitPlan plan, ChannelPlan channel, GrooveForm form) {
        if (form == GrooveForm.EDGE) {
            channel.contours().forEach(edge -> sheet.add(Layer.CHANNEL, line(edge, true)));
        } else if (form == GrooveForm.CENTRE) {
            for (KitPlan.LoopPlan loop : plan.loops()) {
                ToolPaths.rings(channel.size(), loop.breakdown())
                        .forEach(r -> sheet.add(Layer.CHANNEL, new Circle(Places.at(r.centre()), r.radius())));
                ToolPaths.lines(channel.size(), loop.breakdown())
                        .forEach(l -> sheet.add(Layer.CHANNEL, line(l, false)));
            }
        }
    }

    private static Path line(List<ChannelPlan.Corner> corners, boolean closed) {
        return new Path(
                corners.stream()
                        .map(c -> new Vertex(c.at().x(), c.at().y(), c.bulge()))
                        .toList(),
                closed);
    }

    /**
     * The number of the stock that a piece is cut from, where it has room on the piece beside its run; if that has none, and
     * {@code onPaper}, on the run, which is covered there.
     */
    void numberPlates(KitPlan plan, boolean onPaper) {
        Map<PlatePiece, String> names = CutList.plateNames(plan);
        for (PlatePiece piece : plan.plates().pieces()) {
            List<Point> line = Places.all(plan.centreLine(piece));
            labels.keepLeadersOff(head(line.get(0), line.get(1)));
        }
        for (PlatePiece piece : plan.plates().pieces()) {
            double half = plan.job()
                            .catalog()
                            .findPlate(piece.product())
                            .orElseThrow()
                            .width()
                    / 2;
            List<Point> line = Places.all(plan.centreLine(piece));
            plateName(line.get(0), line.get(1), half, piece.places().size() > 1, onPaper, names.get(piece));
        }
    }

    private void plateName(Point a, Point b, double half, boolean twin, boolean onPaper, String name) {
        double height = 1.9 * unit;
        List<Text> places = new ArrayList<>();
        double edge = half - 0.65 * height;
        for (double beside : twin ? new double[] {0, 0.8 * height, edge} : new double[] {half / 2, edge}) {
            places.addAll(besideRun(a, b, beside, height, name));
        }
        if (onPaper && places.stream().noneMatch(labels::isOffPipe) && acrossPipe(a, b, half, name, height)) {
            return;
        }
        places.addAll(besideRun(a, b, half + 0.65 * height, height, name));
        labels.putOn(places, head(a, b));
    }

    /** A name along a run, so far to the left or the right of it. */
    private static List<Text> besideRun(Point a, Point b, double beside, double height, String name) {
        double angle = FloorMarks.readable(a.angleTo(b));
        List<Text> places = new ArrayList<>();
        for (double share : ON_PLATE) {
            for (int side : new int[] {90, -90}) {
                Point at = Places.between(a, b, share).polar(beside, a.angleTo(b) + side);
                places.add(new Text(at, height, angle, Anchor.MIDDLE_CENTRE, name));
            }
        }
        return places;
    }

    /** On a plate without room beside its pipe the name stands on that, which is covered there; false where not even that goes. */
    private boolean acrossPipe(Point a, Point b, double half, String name, double height) {
        double angle = FloorMarks.readable(a.angleTo(b));
        if (2 * half < height || a.distance(b) < Text.roughWidth(name, height)) {
            return false;
        }
        Optional<Text> place = DoubleStream.of(ON_PLATE)
                .mapToObj(share -> new Text(Places.between(a, b, share), height, angle, Anchor.MIDDLE_CENTRE, name))
                .filter(labels::isOffTexts)
                .findFirst();
        place.ifPresent(text -> {
            sheet.add(
                    Layer.BLANK,
                    Path.polygon(Obstacles.Area.of(text, 0.15 * height).corners()));
            sheet.add(Layer.NOTE, text);
            labels.block(text);
        });
        return place.isPresent();
    }

    /** Where a line from a plate's number ends on it. */
    private static Point head(Point a, Point b) {
        return Places.between(a, b, 0.4);
    }

    /** The rectangle that a piece covers. */
    static Path body(KitPlan plan, PlatePiece piece) {
        return Path.polygon(Places.all(plan.body(piece)));
    }

    /** A light cross. */
    private void bare(Point p) {
        double d = 0.7 * unit;
        labels.shun(Extent.at(p).grow(d));
        sheet.add(Layer.NOTE, new Segment(p.plus(-d, -d), p.plus(d, d)));
        sheet.add(Layer.NOTE, new Segment(p.plus(-d, d), p.plus(d, -d)));
    }

    private void ends(String name, List<Element> elements) {
        Element first = elements.get(0);
        Element last = elements.get(elements.size() - 1);
        Point start = end(elements, true);
        Point end = end(elements, false);
        label(start, normal(heading(first, true) + 180), end, name + " flow");
        label(end, normal(heading(last, false)), start, name + " return");
    }

    /**
     * The text goes on where the pipe stops, in line with it; beside the pipe where its other end comes the other way; level
     * beside the end where neither has room.
     */
    private void label(Point p, double away, Point other, String text) {
        boolean facing = Math.abs(normal(p.angleTo(other) - away)) < 45;
        double readable = FloorMarks.readable(away);
        boolean same = Math.abs(normal(away - readable)) < 1;
        Anchor anchor = same == facing ? Anchor.MIDDLE_RIGHT : Anchor.MIDDLE_LEFT;
        List<Text> places = new ArrayList<>();
        for (double beside : facing ? new double[] {2.4, -2.4} : new double[] {0, 2.6, -2.6, 5, -5}) {
            Point at = p.polar(facing ? 0 : 1.5 * unit, away).polar(beside * unit, away + 90);
            places.add(new Text(at, 2.2 * unit, readable, anchor, text));
        }
        places.add(Text.level(p.plus(2.4 * unit, 0), 2.2 * unit, Anchor.MIDDLE_LEFT, text));
        places.add(Text.level(p.plus(-2.4 * unit, 0), 2.2 * unit, Anchor.MIDDLE_RIGHT, text));
        labels.put(places, p);
    }

    private void number(Element.Run run, String number) {
        Point a = Places.at(run.from());
        Point b = Places.at(run.to());
        double angle = a.angleTo(b);
        Point middle = Places.between(a, b, 0.5);
        double height = 2.2 * unit;
        double half = Math.abs(Math.sin(Math.toRadians(angle))) * Text.roughWidth(number, height) / 2
                + Math.abs(Math.cos(Math.toRadians(angle))) * height / 2;
        double off = Math.max(2.1 * unit, half + 0.8 * unit);
        List<Text> places = new ArrayList<>();
        for (double share : shares(run.length())) {
            for (int side : new int[] {90, -90}) {
                Point at = Places.between(a, b, share).polar(off, angle + side);
                places.add(Text.level(at, height, Anchor.MIDDLE_CENTRE, number));
            }
        }
        double readable = FloorMarks.readable(angle);
        for (double share : shares(run.length())) {
            for (int side : new int[] {90, -90}) {
                Point at = Places.between(a, b, share).polar(1.8 * unit, angle + side);
                places.add(new Text(at, height, readable, Anchor.MIDDLE_CENTRE, number));
            }
        }
        labels.putBeside(places, middle);
    }

    /** An arrow about the middle of a run that is long enough for it. */
    private void flow(Element.Run run) {
        Point a = Places.at(run.from());
        Point b = Places.at(run.to());
        if (run.length() > 8 * unit) {
            double angle = a.angleTo(b);
            Arrow arrow = new Arrow(Places.between(a, b, 0.5).polar(2 * unit, angle), angle, 4 * unit);
            sheet.add(Layer.NOTE, arrow);
            labels.block(arrow.extent());
        }
    }

    /** Where along a run its number may stand: about its middle, then beyond its plates towards its ends. */
    private double[] shares(double length) {
        double step = 1.5 * unit / length;
        List<Double> shares = new ArrayList<>(List.of(0.5, 0.4, 0.6));
        for (int i = 1; i <= 9; i++) {
            shares.add(Math.min(0.5, i * step));
            shares.add(Math.max(0.5, 1 - i * step));
        }
        for (double s = 0.2; s <= 0.8; s += 0.05) {
            shares.add(s);
        }
        return shares.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Direction of flow at the start or the end of an element, degrees. */
    private static double heading(Element e, boolean atStart) {
        if (e instanceof Element.Bend bend) {
            double radial = Places.at(bend.centre()).angleTo(Places.at(atStart ? bend.from() : bend.to()));
            return radial + (bend.turn() > 0 ? 90 : -90);
        }
        return Places.at(e.from()).angleTo(Places.at(e.to()));
    }

    private static double normal(double degrees) {
        double d = degrees % 360;
        if (d > 180) {
            return d - 360;
        }
        return d <= -180 ? d + 360 : d;
    }
}
