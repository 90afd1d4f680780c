package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/** Puts short texts where they cover neither each other nor, if it can be, the pipe: the first such place is taken. */
final class Labels {
    /** Air round a text by its height: numbers that nearly touch are read as one. */
    private static final double AIR = 0.4;

    /** Lines go in short parts: the box around a sloped one would keep half the floor free. */
    private static final int PARTS = 8;

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

    /** Keeps a line free of texts that have another place. */
    void shun(Shape line) {
        if (line instanceof Segment s) {
            for (int i = 0; i < PARTS; i++) {
                Point from = Places.between(s.a(), s.b(), (double) i / PARTS);
                shun(Extent.around(List.of(from, Places.between(s.a(), s.b(), (i + 1.0) / PARTS))));
            }
        } else {
            shun(line.extent());
        }
    }

    /** Writes the text at the best of the places. */
    void put(List<Text> places) {
        List<Text> free = places.stream()
                .filter(t -> isFree(t.extent().grow(AIR * t.height()), used))
                .toList();
        Text chosen = free.stream()
                .filter(t -> isFree(t.extent(), shy))
                .findFirst()
                .orElseGet(() -> free.isEmpty() ? places.get(0) : free.get(0));
        used.add(chosen.extent());
        sheet.add(Layer.NOTE, chosen);
    }

    private static boolean isFree(Extent e, List<Extent> taken) {
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
