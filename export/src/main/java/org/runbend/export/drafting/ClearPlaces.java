package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.drafting.Obstacles.Area;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/**
 * Puts texts where they cover neither each other nor anything that was kept free. Turned texts are taken as the turned boxes
 * they are: two convex shapes are apart if a line along a side of one of them parts them.
 */
final class ClearPlaces {
    private static final double BELOW = 0.35;
    private static final double BESIDE = 0.25;

    private final SheetBuilder sheet;
    private final List<Area> taken = new ArrayList<>();
    private final List<Area> shy = new ArrayList<>();
    private final List<Area> texts = new ArrayList<>();

    ClearPlaces(SheetBuilder sheet) {
        this.sheet = sheet;
    }

    /** Keeps a box free. */
    void block(Extent box) {
        taken.add(Area.of(box));
    }

    /** Keeps a line free. */
    void block(Point a, Point b) {
        taken.add(Area.of(List.of(a, b)));
    }

    /** Keeps a line free of texts that have another place. */
    void shun(Point a, Point b) {
        shy.add(Area.of(List.of(a, b)));
    }

    /** Keeps the place of a text that is drawn by another hand free. */
    void block(Text text) {
        taken.add(Area.of(box(text)));
        texts.add(Area.of(box(text)));
    }

    /** Writes the text at the first of the places that is clear; empty if none is, and nothing is written. */
    Optional<Text> put(Layer layer, List<Text> places) {
        Optional<Text> chosen = find(places, true).or(() -> find(places, false));
        chosen.ifPresent(text -> write(layer, text));
        return chosen;
    }

    /** The first of the places that is clear, also of shunned lines if asked. */
    Optional<Text> find(List<Text> places, boolean offLines) {
        return places.stream()
                .filter(t -> isClear(t, taken))
                .filter(t -> !offLines || isClear(t, shy))
                .findFirst();
    }

    /** Writes a text where it stands. */
    void write(Layer layer, Text text) {
        Area area = Area.of(box(text));
        taken.add(area);
        texts.add(area);
        sheet.add(layer, text);
    }

    /** Whether a line crosses no text. */
    boolean crossesNoText(Segment line) {
        Area area = Area.of(List.of(line.a(), line.b()));
        return texts.stream().noneMatch(area::meets);
    }

    /** Draws a thin line, broken where texts stand. */
    void drawBeside(Layer layer, Segment line) {
        Obstacles.parted(line, texts).forEach(part -> sheet.add(layer, part));
    }

    private static boolean isClear(Text text, List<Area> taken) {
        return taken.stream().noneMatch(Area.of(box(text))::meets);
    }

    /** The letters with their descenders and a little air. */
    private static List<Point> box(Text text) {
        double h = text.height();
        double width = Text.roughWidth(text.string(), h);
        Point start = text.baselineStart(width).polar(-BESIDE * h, text.angle());
        Point low = start.polar(-BELOW * h, text.angle() + 90);
        Point high = start.polar((1 + BESIDE) * h, text.angle() + 90);
        double across = width + 2 * BESIDE * h;
        return List.of(low, low.polar(across, text.angle()), high.polar(across, text.angle()), high);
    }
}
