package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/** Puts short texts where they cover neither each other nor, if it can be, the pipe: the first such place is taken. */
final class Labels {
    private final SheetBuilder sheet;
    private final List<Extent> used = new ArrayList<>();
    private final List<Extent> shy = new ArrayList<>();

    Labels(SheetBuilder sheet) {
        this.sheet = sheet;
    }

    /** Keeps a place free of texts. */
    void block(Extent place) {
        used.add(place);
    }

    /** Keeps a place free of texts that have another one. */
    void shun(Extent place) {
        shy.add(place);
    }

    /** Writes the text at the best of the places. */
    void put(List<Text> places) {
        List<Text> free = places.stream().filter(t -> isFree(t, used)).toList();
        Text chosen = free.stream()
                .filter(t -> isFree(t, shy))
                .findFirst()
                .orElseGet(() -> free.isEmpty() ? places.get(0) : free.get(0));
        used.add(chosen.extent());
        sheet.add(Layer.NOTE, chosen);
    }

    private static boolean isFree(Text text, List<Extent> taken) {
        Extent e = text.extent();
        return taken.stream()
                .noneMatch(
                        u -> e.minX() < u.maxX() && u.minX() < e.maxX() && e.minY() < u.maxY() && u.minY() < e.maxY());
    }

    /** A text in the middle of something, or over, under, right or left of it. */
    static List<Text> around(Extent box, double gap, double height, String string) {
        Point c = box.centre();
        return List.of(
                Text.level(c, height, Anchor.MIDDLE_CENTRE, string),
                Text.level(new Point(c.x(), box.maxY() + gap), height, Anchor.BOTTOM_CENTRE, string),
                Text.level(new Point(c.x(), box.minY() - gap), height, Anchor.TOP_CENTRE, string),
                Text.level(new Point(box.maxX() + gap, c.y()), height, Anchor.MIDDLE_LEFT, string),
                Text.level(new Point(box.minX() - gap, c.y()), height, Anchor.MIDDLE_RIGHT, string));
    }
}
