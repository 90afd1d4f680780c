package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfDrawing;

/** Finds the floor in a drawing. What cannot be told apart is refused in one line; what was concluded is in the sketch. */
public final class FloorReading {
    private static final double SQUARE_METRE = Candidates.SQUARE_METRE;
    private static final double LARGEST = Candidates.LARGEST;
    private static final double SMALLEST = 0.1 * SQUARE_METRE;
    /** Longest side of its box that a job file takes, mm. */
    private static final double LONGEST = 25_000;

    /** Closed lines of less than this share of the floor are things on it. */
    private static final double LIKE_A_FLOOR = 0.3;

    /** Wider openings are drawn on purpose, mm. */
    private static final double LIKELY_GAP = 20;

    /** Coordinates beyond this are of a survey, not of a floor, mm. */
    private static final double FAR = 100_000;

    private final String name;
    private final DxfDrawing drawing;
    private final OutlineRequest request;
    private final List<String> guesses = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();

    private FloorReading(String name, DxfDrawing drawing, OutlineRequest request) {
        this.name = name;
        this.drawing = drawing;
        this.request = request;
    }

    /**
     * The floor of a drawing.
     *
     * @param name of the drawing, for people
     * @throws NoOutline if there is none, or more than one, or the unit is not known
     */
    public static FloorSketch read(String name, DxfDrawing drawing, OutlineRequest request) {
        return new FloorReading(name, drawing, request).sketch();
    }

    private FloorSketch sketch() {
        Optional<OwnDrawing> own = own();
        return own.isPresent() ? ownSketch(own.get()) : foreignSketch();
    }

    /** A drawing of ours in the unit that it was written in, if nobody asks for another line of it. */
    private Optional<OwnDrawing> own() {
        boolean mm = request.unit().or(drawing::unit).orElse(DrawingUnit.MM) == DrawingUnit.MM;
        boolean asked = request.layer().isPresent()
                || request.contour().isPresent()
                || request.at().isPresent();
        return mm && !asked ? OwnDrawing.of(drawing) : Optional.empty();
    }

    private FloorSketch ownSketch(OwnDrawing own) {
        DrawnShapes figures =
                new DrawnShapes(own.rest(), DrawingUnit.MM.mm(), request.tolerance(), request::isUnheated);
        ClosedLines lines = ClosedLines.of(figures, request.tolerance());
        guesses.add("this is a drawing of Runbend's own: outline, port, names, kinds, marks and supports are as it was"
                + " written, what somebody added since is read as in any drawing");
        FloorContent content = FloorContent.exact(own.floor(), figures, lines.contours(), request, guesses, leftOut);
        sayBends(figures);
        sayLeftOut(figures, lines);
        List<Obstacle> keepOuts = new ArrayList<>(own.keepOuts());
        keepOuts.addAll(content.obstacles());
        List<Obstacle> unheated = new ArrayList<>(own.unheated());
        unheated.addAll(content.unheated());
        List<FloorSketch.Mark> marks = new ArrayList<>();
        own.marks().forEach(m -> marks.add(mark(m, content.outline())));
        marks.addAll(content.marks());
        return new FloorSketch(
                name,
                shown(drawing.version()) + ", unit mm",
                content.outline(),
                keepOuts,
                unheated,
                marks,
                content.remarks(),
                own.supports(),
                own.facts(),
                List.of(),
                guesses,
                leftOut);
    }

    /** The side whose middle is nearest to that of the side it was written for. */
    private static FloorSketch.Mark mark(OwnDrawing.Mark mark, Contour outline) {
        if (!mark.ofSide()) {
            return new FloorSketch.Mark(-1, mark.at(), mark.text());
        }
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < outline.path().partCount(); i++) {
            double off = Tidying.middle(
                            outline.path().vertices().get(i), outline.path().end(i))
                    .distance(mark.at());
            if (off < least) {
                least = off;
                best = i;
            }
        }
        return new FloorSketch.Mark(best, mark.at(), mark.text());
    }

    private FloorSketch foreignSketch() {
        DrawingUnit unit = unit();
        DrawnShapes figures = new DrawnShapes(drawing, unit.mm(), request.tolerance(), request::isUnheated);
        ClosedLines lines = ClosedLines.of(figures, request.tolerance());
        checkUnheated(figures, lines);
        Walls.Found walls = Walls.opened(lines.contours());
        guesses.addAll(walls.words());
        Candidates candidates = new Candidates(walls.contours(), walls.opened(), figures, request::isUnheated, guesses);
        Contour outline = outline(candidates, figures, lines);
        checkSize(outline, unit);
        outline.crossing().ifPresent(p -> {
            throw new NoOutline("the outline (layer " + shown(outline.layer()) + ") crosses or touches itself near "
                    + shown(p) + "; draw it as one closed line");
        });
        describe(outline, lines);
        Point shift = shift(outline);
        FloorContent content = new FloorContent(outline, shift, figures, walls.contours(), request, guesses, leftOut);
        sayBends(figures);
        sayLeftOut(figures, lines);
        return new FloorSketch(
                name,
                (drawing.version().isEmpty() ? "no version" : shown(drawing.version())) + ", unit " + unit.symbol(),
                content.outline(),
                content.obstacles(),
                content.unheated(),
                content.marks(),
                content.remarks(),
                List.of(),
                new TreeMap<>(),
                others(candidates, outline, shift),
                guesses,
                leftOut);
    }

    /** What could be taken instead, where it lies as it was drawn. */
    private static List<Candidate> others(Candidates candidates, Contour outline, Point shift) {
        boolean moved = shift.x() != 0 || shift.y() != 0;
        return moved
                ? List.of()
                : candidates.all().stream()
                        .filter(c -> !c.contour().equals(outline))
                        .filter(c -> !c.what().isEmpty() || c.contour().area() >= LIKE_A_FLOOR * outline.area())
                        .toList();
    }

    private void checkUnheated(DrawnShapes figures, ClosedLines lines) {
        if (request.unheated().isEmpty()) {
            return;
        }
        String layer = request.unheated().get();
        if (lines.contours().stream().noneMatch(c -> c.layer().equalsIgnoreCase(layer))) {
            throw new NoOutline("--unheated " + shown(layer)
                    + ": no closed line and no hatch is on that layer; there are "
                    + figures.layers.stream().limit(12).map(FloorReading::shown).collect(Collectors.joining(", ")));
        }
    }

    private void sayBends(DrawnShapes figures) {
        figures.bends.stream().limit(10).forEach(b -> guesses.add(b.words()));
        if (figures.bends.size() > 10) {
            guesses.add((figures.bends.size() - 10) + " more lines of chords were taken for arcs");
        }
    }

    private DrawingUnit unit() {
        if (request.unit().isPresent()) {
            guesses.add("the unit is " + request.unit().get().symbol() + " as said, the drawing says "
                    + drawing.unit().map(DrawingUnit::symbol).orElse("none"));
            return request.unit().get();
        }
        return drawing.unit().orElseThrow(() -> {
            Optional<Extent> found = UnitHints.box(drawing);
            if (found.isEmpty()) {
                return new NoOutline(new Nothing(drawing, new DrawnShapes(drawing, 1)).words() + hiddenHint());
            }
            Extent box = found.get();
            return new NoOutline("the drawing names no unit, and its largest line measures " + n(box.width()) + " x "
                    + n(box.height()) + ": " + UnitHints.words(box.width(), box.height(), drawing.metric()));
        });
    }

    private String hiddenHint() {
        return drawing.hidden().isEmpty()
                ? ""
                : "; frozen or switched off: layer "
                        + drawing.hidden().keySet().stream()
                                .map(FloorReading::shown)
                                .limit(5)
                                .collect(Collectors.joining(", "));
    }

    private Contour outline(Candidates candidates, DrawnShapes figures, ClosedLines lines) {
        if (request.contour().isPresent()) {
            return candidates.numbered(request.contour().getAsInt());
        }
        if (request.at().isPresent()) {
            return candidates.around(request.at().get());
        }
        if (request.layer().isPresent()) {
            String layer = request.layer().get();
            boolean any = lines.contours().stream().anyMatch(c -> c.layer().equalsIgnoreCase(layer));
            if (!any) {
                throw noneOnLayer(layer, figures, lines);
            }
        }
        List<Contour> closed = lines.contours().stream()
                .filter(this::isWanted)
                .filter(c -> !request.isUnheated(c.layer()))
                .toList();
        boolean some = candidates.all().stream().anyMatch(c -> isWanted(c.contour()));
        Contour best = some
                ? candidates.chosen(this::isWanted)
                : closed.stream().findFirst().orElse(null);
        checkOpen(lines, best, candidates);
        if (best == null) {
            throw noneClosed(figures, lines);
        }
        return best;
    }

    private boolean isWanted(Contour c) {
        return request.layer().map(c.layer()::equalsIgnoreCase).orElse(true);
    }

    /** Refuses a closed line where a larger one round it fails by a gap or two: that one is the floor. */
    private void checkOpen(ClosedLines lines, Contour best, Candidates candidates) {
        if (best == null || request.layer().isPresent()) {
            return;
        }
        Gaps.closing(lines.left(), request.tolerance(), LIKELY_GAP, 1.05 * best.area())
                .filter(c -> c.contour().boxCovers(best) && c.contour().area() <= Candidates.LARGEST)
                .ifPresent(c -> {
                    throw new NoOutline(
                            "no closed outline: a line round the largest closed one has " + c.words()
                                    + (candidates.isEmpty()
                                            ? ""
                                            : "; or take a closed one: " + candidates.words(candidates.all())),
                            candidates.all());
                });
    }

    private NoOutline noneOnLayer(String layer, DrawnShapes figures, ClosedLines lines) {
        if (!figures.layers.contains(layer)) {
            return new NoOutline("nothing visible is on layer " + shown(layer) + "; there are "
                    + figures.layers.stream().limit(12).map(FloorReading::shown).collect(Collectors.joining(", ")));
        }
        return new NoOutline("no closed line is on layer " + shown(layer) + gap(lines));
    }

    private NoOutline noneClosed(DrawnShapes figures, ClosedLines lines) {
        boolean drawn = !figures.pieces.isEmpty() || !lines.left().isEmpty();
        return new NoOutline(
                drawn ? "no closed outline" + gap(lines) : new Nothing(drawing, figures).words() + hiddenHint());
    }

    private String gap(ClosedLines lines) {
        Optional<Gaps.Closing> closing =
                Gaps.closing(lines.left(), request.tolerance(), OutlineRequest.MOST_TOLERANCE, SMALLEST);
        if (closing.isPresent()) {
            return ": the longest chain of lines has " + closing.get().words();
        }
        return lines.open()
                .map(g -> ": the longest chain of lines is open from " + shown(g.a()) + " to " + shown(g.b()) + ", "
                        + n(Math.rint(g.width() * 10) / 10)
                        + " mm apart; draw a line across, if only to close a door's opening")
                .orElse("");
    }

    private void checkSize(Contour outline, DrawingUnit unit) {
        double w = outline.box().width();
        double h = outline.box().height();
        boolean isLong = Math.max(w, h) > LONGEST;
        if (outline.weight() >= SMALLEST && outline.weight() <= LARGEST && !isLong) {
            return;
        }
        throw new NoOutline("the largest closed line (layer " + shown(outline.layer()) + ") would be a floor of "
                + UnitHints.metres(w, h) + " in " + unit.symbol() + ", "
                + (outline.weight() > LARGEST ? "over 25 m2" : isLong ? "over 25 m long" : "under 0.1 m2") + "; "
                + UnitHints.words(w / unit.mm(), h / unit.mm(), drawing.metric()));
    }

    private void describe(Contour outline, ClosedLines lines) {
        String how = request.contour().isPresent() || request.at().isPresent()
                ? "the closed line that was named"
                : guesses.stream().anyMatch(g -> g.contains("--contour"))
                        ? "the closed line that is left"
                        : request.layer().isPresent()
                                ? "the largest closed line of its layer"
                                : "the largest closed line";
        guesses.add("the outline is " + how + ", layer " + shown(outline.layer()) + ", " + metres(outline) + ", box "
                + n(outline.box().width()) + " x " + n(outline.box().height()) + " mm");
        for (Gap gap : lines.closed().stream().limit(10).toList()) {
            guesses.add("a gap of " + Decimals.of(gap.width(), 3) + " mm at " + shown(gap.a()) + " was closed");
        }
        if (lines.closed().size() > 10) {
            guesses.add((lines.closed().size() - 10) + " more gaps were closed");
        }
        for (Corner corner : lines.corners().stream().limit(10).toList()) {
            guesses.add("lines that crossed or fell short by up to " + Decimals.of(corner.off(), 3)
                    + " mm were made to meet at the corner " + shown(corner.at()));
        }
        if (lines.corners().size() > 10) {
            guesses.add((lines.corners().size() - 10) + " more corners were made to meet");
        }
        if (outline.curved()) {
            guesses.add("curves that are no arcs became chords within 0.1 mm");
        }
    }

    /** How far everything is moved: not at all, or from a far place to the lower left corner. */
    private Point shift(Contour outline) {
        Extent box = outline.box();
        double far = Math.max(
                Math.max(Math.abs(box.minX()), Math.abs(box.maxX())),
                Math.max(Math.abs(box.minY()), Math.abs(box.maxY())));
        if (far <= FAR) {
            return new Point(0, 0);
        }
        guesses.add(
                "the drawing lies far off: its place " + shown(new Point(box.minX(), box.minY())) + " is [0, 0] here");
        return new Point(-box.minX(), -box.minY());
    }

    private void sayLeftOut(DrawnShapes figures, ClosedLines lines) {
        drawing.ignored().forEach((type, n) -> say(n, shown(type)));
        for (Map.Entry<String, Integer> layer : drawing.hidden().entrySet()) {
            say(layer.getValue(), "entities on layer " + shown(layer.getKey()) + ", which is frozen or off");
        }
        figures.hatches.forEach((layer, n) -> leftOut.add("HATCH: " + n + " on layer " + shown(layer)
                + "; if that is unheated floor, say --unheated " + shown(layer)));
        say(drawing.paper(), "entities in paper space");
        figures.own.forEach((layer, n) -> say(n, "entities on layer " + layer + " of a drawing of Runbend's own"));
        say(lines.loose(), "lines that are part of no closed one");
        say(lines.doubled(), "lines drawn twice");
        say(lines.dividing(), "lines that divide a closed line");
        leftOut.addAll(drawing.remarks());
    }

    private void say(int n, String what) {
        if (n > 0) {
            leftOut.add(what + ": " + n);
        }
    }

    static String metres(Contour c) {
        return String.format(Locale.ROOT, "%.2f m2", c.area() / SQUARE_METRE);
    }

    static String shown(Point p) {
        return "[" + n(p.x()) + ", " + n(p.y()) + "]";
    }

    /** A name of the drawing in a message. */
    static String shown(String foreign) {
        String line = foreign.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]+", " ").strip();
        return line.length() > 60 ? line.substring(0, 60) + "..." : line.isEmpty() ? "''" : line;
    }

    static String n(double value) {
        return Decimals.of(value, 3);
    }
}
