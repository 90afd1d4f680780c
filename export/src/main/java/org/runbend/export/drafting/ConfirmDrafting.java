package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * Draws a floor for the customer to confirm: outline with lettered corners and lengths, diagonals, what lies on it, marks. No
 * pipe. A word that finds no clear place is left out here; the lists of the paper hold every one.
 */
public final class ConfirmDrafting {
    /** Heights of capitals, mm on paper; 1.7 mm is a letter of 6.6 points. */
    private static final double LETTER = 3;

    private static final double LENGTH = 2.1;
    private static final double WORD = 2;
    private static final double ALL_OVER = 16;
    private static final double[] ALONG = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8};
    private static final int MOST_LINES = 6;
    /** What a piece of a bend turns, degrees. */
    private static final double TURN = 6;

    private final Job job;
    private final List<Segment> pipes;
    private final TapeSheet tape;
    private final TapeText words;
    private final double unit;
    private final SheetBuilder sheet;
    private final ClearPlaces places;
    private final List<Point> outline;
    private final List<Point> named = new ArrayList<>();
    private final Map<String, Point> corners = new HashMap<>();

    private ConfirmDrafting(Job job, List<Path> pipes, TapeSheet tape, double unit) {
        this.job = job;
        this.pipes = pipes.stream().flatMap(p -> chords(p).stream()).toList();
        this.tape = tape;
        this.words = new TapeText(job);
        this.unit = unit;
        this.sheet = new SheetBuilder(job.title());
        this.places = new ClearPlaces(sheet);
        this.outline = Places.all(job.floor().outline());
        tape.corners().forEach(c -> corners.put(c.name(), Places.at(c.at())));
    }

    /**
     * The drawing for a given scale.
     *
     * @param unit mm on the floor that make one mm on paper
     */
    public static Sheet draw(Job job, TapeSheet tape, double unit) {
        return new ConfirmDrafting(job, List.of(), tape, unit).sheet();
    }

    /** The drawing for a given scale with the pipe of a plan, as a thin line. */
    public static Sheet draw(KitPlan plan, TapeSheet tape, double unit) {
        List<Path> pipes = plan.loops().stream()
                .map(loop -> LoopMarks.path(loop.breakdown().elements()))
                .toList();
        return new ConfirmDrafting(plan.job(), pipes, tape, unit).sheet();
    }

    private Sheet sheet() {
        Extent floor = Extent.around(outline);
        shapes();
        overAll(floor);
        List<TapeSheet.Diagonal> lines =
                tape.diagonals().stream().limit(MOST_LINES).toList();
        lines.forEach(this::diagonal);
        marks();
        letters();
        sides();
        things();
        lines.forEach(this::diagonalLength);
        pipes.forEach(s -> places.drawBeside(Layer.CHANNEL, s));
        lines.forEach(d -> places.drawBeside(Layer.DIMENSION, line(d)));
        scaleBar(floor);
        return sheet.build();
    }

    /** Lines first, so that every word knows what to keep clear of. */
    private void shapes() {
        sheet.add(Layer.FLOOR, Path.polygon(outline));
        pipes.forEach(s -> places.shun(s.a(), s.b()));
        for (int i = 0; i < outline.size(); i++) {
            places.block(outline.get(i), outline.get((i + 1) % outline.size()));
        }
        FloorShapes shapes = new FloorShapes(sheet, unit);
        Point port = Places.at(job.floor().port().at());
        shapes.port(port);
        places.block(Extent.at(port).grow(2 * unit));
        named.add(port);
        for (Job.Unheated cold : job.floor().unheated()) {
            sheet.add(Layer.UNHEATED, Path.polygon(Places.all(cold.region().corners())));
        }
        job.floor().below().forEach(shapes::below);
        job.floor().supports().forEach(shapes::support);
        for (KeepOut k : job.floor().keepOuts()) {
            Extent box = shapes.keepOut(k);
            places.block(box);
            named.add(box.centre());
        }
        for (TapeSheet.Thing hole : tape.holes()) {
            double radius = Math.max(job.groove().pad() / 2, 0.6 * unit);
            sheet.add(Layer.HOLE, new Circle(Places.at(hole.at()), radius));
            named.add(Places.at(hole.at()));
            places.block(Extent.at(Places.at(hole.at())).grow(radius));
        }
    }

    private void overAll(Extent floor) {
        Point corner = new Point(floor.minX(), floor.minY());
        overAll(corner, new Point(floor.maxX(), floor.minY()), -ALL_OVER, tape.width());
        overAll(corner, new Point(floor.minX(), floor.maxY()), ALL_OVER, tape.height());
    }

    private void overAll(Point a, Point b, double offset, double length) {
        String text = "over all " + words.of(length);
        Dimension d = new Dimension(a, b, offset * unit, LENGTH * unit, text);
        sheet.add(Layer.DIMENSION, d);
        places.block(d.label());
        places.block(d.lineStart(), d.lineEnd());
        places.block(a, d.lineStart());
        places.block(b, d.lineEnd());
    }

    private void letters() {
        for (TapeSheet.Corner c : tape.corners()) {
            Point at = Places.at(c.at());
            double outwards = outwards(c.index());
            List<Text> choice = new ArrayList<>();
            for (double away : new double[] {3.1, 3.8, 4.6, 6}) {
                for (double turn : new double[] {0, 25, -25, 50, -50, 75, -75, 150, -150, 180}) {
                    choice.add(letter(at.polar(away * unit, outwards + turn), c.name()));
                }
            }
            places.put(Layer.TITLE, choice);
        }
    }

    private Text letter(Point at, String name) {
        return Text.level(at, LETTER * unit, Anchor.MIDDLE_CENTRE, TapeText.shortName(name));
    }

    /** Half way between the outward directions of the two sides at a corner, degrees. */
    private double outwards(int index) {
        int n = outline.size();
        Point at = outline.get(index);
        double in = outline.get((index + n - 1) % n).angleTo(at);
        double out = at.angleTo(outline.get((index + 1) % n));
        double turn = out - in;
        turn -= 360 * Math.rint(turn / 360);
        return in + turn / 2 + (Places.isAnticlockwise(outline) ? -90 : 90);
    }

    private void sides() {
        for (TapeSheet.Side s : tape.sides()) {
            Point a = corners.get(s.from());
            Point b = corners.get(s.to());
            if (s.isCurved()) {
                curve(s, a.angleTo(b));
            } else {
                beside(a, b, a.angleTo(b), length(s.from(), s.to(), s.length()));
            }
        }
    }

    /** Chord and rise stand at the crest, outside or well inside. */
    private void curve(TapeSheet.Side s, double along) {
        String text = "straight " + length(s.from(), s.to(), s.length()) + ", rise " + words.of(Math.abs(s.rise()));
        Point crest = Places.at(s.crest());
        List<Text> choice = new ArrayList<>();
        for (double inside : new double[] {-0.9, 1.5, 4, 6, 8, 11, 15, 20}) {
            choice.add(along(crest.polar(inside * unit, along + 90), along, inside < 0, text));
        }
        places.put(Layer.NOTE, choice);
    }

    /** A length along a straight side, outside first, then inside. */
    private void beside(Point a, Point b, double along, String text) {
        List<Text> choice = new ArrayList<>();
        for (boolean outside : new boolean[] {true, false}) {
            for (double share : ALONG) {
                Point foot = Places.between(a, b, share).polar(0.9 * unit, along + (outside ? -90 : 90));
                choice.add(along(foot, along, outside, text));
            }
        }
        places.put(Layer.NOTE, choice);
    }

    private Text along(Point foot, double along, boolean outside, String text) {
        double readable = FloorMarks.readable(along);
        boolean turned = Math.abs(readable - along) > 1;
        Anchor anchor = outside == turned ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        return new Text(foot, LENGTH * unit, readable, anchor, text);
    }

    /** What the customer measured where that is known, else what the floor measures. */
    private String length(String from, String to, double computed) {
        return job.measured().stream()
                .filter(m -> (m.from().equals(from) && m.to().equals(to))
                        || (m.from().equals(to) && m.to().equals(from)))
                .findFirst()
                .map(m -> words.of(m.length()))
                .orElseGet(() -> words.of(computed));
    }

    private void things() {
        Point port = Places.at(job.floor().port().at());
        name(Layer.NOTE, Extent.at(port).grow(2 * unit), "port");
        for (TapeSheet.Thing hole : tape.holes()) {
            double radius = Math.max(job.groove().pad() / 2, 0.6 * unit);
            name(Layer.NOTE, Extent.at(Places.at(hole.at())).grow(radius), hole.name());
        }
        List<KeepOut> keepOuts = job.floor().keepOuts();
        for (int i = 0; i < keepOuts.size(); i++) {
            String number = TapeText.number(job, i);
            name(
                    Layer.KEEP_OUT,
                    box(keepOuts.get(i)),
                    number.isEmpty() ? keepOuts.get(i).name() : number);
        }
        for (Job.Below below : job.floor().below()) {
            within(Extent.around(Places.all(below.region().corners())), FloorShapes.named(below));
        }
        job.floor()
                .supports()
                .forEach(s -> beside(
                        Places.at(s.from()),
                        Places.at(s.to()),
                        Places.at(s.from()).angleTo(Places.at(s.to())),
                        s.name()));
        for (Job.Unheated cold : job.floor().unheated()) {
            Extent box = Extent.around(Places.all(cold.region().corners()));
            List<Text> choice = new ArrayList<>();
            for (String text :
                    List.of(TapeText.shortName(cold.name()) + " (no heat)", TapeText.shortName(cold.name()))) {
                choice.add(Text.level(box.centre(), WORD * unit, Anchor.MIDDLE_CENTRE, text));
            }
            if (places.put(Layer.NOTE, choice).isEmpty()) {
                name(Layer.NOTE, box, cold.name());
            }
        }
    }

    private static Extent box(KeepOut k) {
        if (k.bare() instanceof org.runbend.optimizer.job.Shape.Polygon p) {
            return Extent.around(Places.all(p.corners())).grow(k.clearance());
        }
        if (k.bare() instanceof org.runbend.optimizer.job.Shape.Circle c) {
            return Extent.at(Places.at(c.centre())).grow(c.radius() + k.clearance());
        }
        var spot = (org.runbend.optimizer.job.Shape.Spot) k.bare();
        return Extent.at(Places.at(spot.at())).grow(spot.radius() + k.clearance());
    }

    /** A name in a region, else beside it. */
    private void within(Extent box, String name) {
        Text inside = Text.level(box.centre(), WORD * unit, Anchor.MIDDLE_CENTRE, TapeText.shortName(name));
        if (inside.extent().width() > box.width()
                || places.put(Layer.NOTE, List.of(inside)).isEmpty()) {
            name(Layer.NOTE, box, name);
        }
    }

    /**
     * A name close by what it names, nearer to that than to anything else that has a name; where there is no room, farther off with a
     * line that leads back.
     */
    private void name(Layer layer, Extent box, String name) {
        List<Text> near =
                around(box, name, 1, 2).stream().filter(t -> isNearest(t, box)).toList();
        List<Text> far = around(box, name, 4, 7, 10, 14, 19, 25).stream()
                .filter(t -> places.crossesNoText(leader(t, box)))
                .toList();
        places.find(near, true)
                .or(() -> places.find(far, true))
                .or(() -> places.find(near, false))
                .or(() -> places.find(far, false))
                .or(() -> near.stream().findFirst())
                .or(() -> around(box, name, 1).stream().findFirst())
                .ifPresent(text -> {
                    if (far.contains(text)) {
                        Segment line = leader(text, box);
                        sheet.add(Layer.NOTE, line);
                        places.block(line.a(), line.b());
                    }
                    places.write(layer, text);
                });
    }

    private static Segment leader(Text text, Extent box) {
        return new Segment(text.at(), box.centre());
    }

    /** Whether no other thing that has a name is as near to a text. */
    private boolean isNearest(Text text, Extent own) {
        double away = text.extent().centre().distance(own.centre());
        return named.stream()
                .filter(p -> p.distance(own.centre()) > 1e-6)
                .noneMatch(p -> text.extent().centre().distance(p) < away);
    }

    private List<Text> around(Extent box, String name, double... gaps) {
        String text = TapeText.shortName(name);
        double h = WORD * unit;
        List<Text> choice = new ArrayList<>();
        for (double gap : gaps) {
            double g = gap * unit;
            choice.add(Text.level(new Point(box.centre().x(), box.maxY() + g), h, Anchor.BOTTOM_CENTRE, text));
            choice.add(Text.level(new Point(box.centre().x(), box.minY() - g), h, Anchor.TOP_CENTRE, text));
            choice.add(Text.level(new Point(box.maxX() + g, box.centre().y()), h, Anchor.MIDDLE_LEFT, text));
            choice.add(Text.level(new Point(box.minX() - g, box.centre().y()), h, Anchor.MIDDLE_RIGHT, text));
            choice.add(Text.level(new Point(box.maxX() + g, box.maxY() + g), h, Anchor.BOTTOM_LEFT, text));
            choice.add(Text.level(new Point(box.minX() - g, box.maxY() + g), h, Anchor.BOTTOM_RIGHT, text));
            choice.add(Text.level(new Point(box.maxX() + g, box.minY() - g), h, Anchor.TOP_LEFT, text));
            choice.add(Text.level(new Point(box.minX() - g, box.minY() - g), h, Anchor.TOP_RIGHT, text));
        }
        return choice;
    }

    private void marks() {
        for (Job.FloorMark mark : job.floor().marks()) {
            Point at = Places.at(mark.at());
            int edge = mark.edge() >= 0 ? mark.edge() : FloorMarks.nearestEdge(at, outline, 2 * unit);
            if (edge < 0) {
                name(Layer.TITLE, Extent.at(at), mark.text());
            } else {
                mark(mark.text(), at, edge);
            }
        }
    }

    /** An arrow head that points at the place from outside, the word beyond it. */
    private void mark(String name, Point at, int edge) {
        String text = TapeText.shortName(name);
        double along = outline.get(edge).angleTo(outline.get((edge + 1) % outline.size()));
        double out = along + (Places.isAnticlockwise(outline) ? -90 : 90);
        double readable = FloorMarks.readable(along);
        boolean above = StrictMath.cos(Math.toRadians(out - readable - 90)) > 0;
        Anchor anchor = above ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        List<Text> choice = new ArrayList<>();
        for (double away : new double[] {4, 6.8, 9.6, 12.4}) {
            for (double step : new double[] {0, 8, -8, 16, -16, 24, -24}) {
                Point foot = at.polar(away * unit, out).polar(step * unit, along);
                choice.add(new Text(foot, (LENGTH + 0.3) * unit, readable, anchor, text));
            }
        }
        Arrow pointer = new Arrow(at.polar(0.6 * unit, out), out + 180, 2.4 * unit);
        sheet.add(Layer.TITLE, pointer);
        places.block(pointer.extent());
        places.put(Layer.TITLE, choice);
    }

    private void diagonal(TapeSheet.Diagonal d) {
        Segment line = line(d);
        places.shun(line.a(), line.b());
    }

    private Segment line(TapeSheet.Diagonal d) {
        return new Segment(corners.get(d.from()), corners.get(d.to()));
    }

    /** A pipe as straight pieces, short ones at bends. */
    private static List<Segment> chords(Path pipe) {
        List<Segment> chords = new ArrayList<>();
        for (Shape part : pipe.parts()) {
            if (part instanceof Arc arc) {
                int count = (int) Math.ceil(Math.abs(arc.sweep()) / TURN);
                Point from = arc.start();
                for (int i = 1; i <= count; i++) {
                    Point to = arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / count);
                    chords.add(new Segment(from, to));
                    from = to;
                }
            } else if (part instanceof Segment s) {
                chords.add(s);
            }
        }
        return chords;
    }

    private void diagonalLength(TapeSheet.Diagonal d) {
        Point a = corners.get(d.from());
        Point b = corners.get(d.to());
        double angle = FloorMarks.readable(a.angleTo(b));
        List<Text> choice = new ArrayList<>();
        for (double share : new double[] {0.36, 0.64, 0.28, 0.72, 0.2, 0.8, 0.5, 0.44, 0.56, 0.14, 0.86}) {
            Point foot = Places.between(a, b, share).polar(0.8 * unit, angle + 90);
            choice.add(
                    new Text(foot, LENGTH * unit, angle, Anchor.BOTTOM_CENTRE, length(d.from(), d.to(), d.length())));
        }
        places.put(Layer.DIMENSION, choice);
    }

    /** A printer may shrink a page; a bar shrinks with it. */
    private void scaleBar(Extent floor) {
        double length = 100;
        for (double longer : new double[] {200, 500, 1000, 2000}) {
            length = longer <= 40 * unit ? longer : length;
        }
        Point at = new Point(floor.minX(), floor.minY() - (ALL_OVER + 5) * unit);
        sheet.add(Layer.TITLE, new Segment(at, at.plus(length, 0)));
        for (double x : new double[] {0, length}) {
            sheet.add(Layer.TITLE, new Segment(at.plus(x, -unit), at.plus(x, unit)));
        }
        String text = words.full(length) + (words.full(length).contains("(") ? "" : " mm") + " on the floor";
        sheet.add(Layer.NOTE, Text.level(at.plus(length + 2 * unit, 0), WORD * unit, Anchor.MIDDLE_LEFT, text));
        String scale = "scale 1:" + Decimals.of(unit, 1) + " if printed at 100 %"
                + (pipes.isEmpty() ? "" : "; thin line: where the pipe is to lie");
        sheet.add(Layer.NOTE, Text.level(at.plus(0, -2 * unit), WORD * unit, Anchor.TOP_LEFT, scale));
    }
}
