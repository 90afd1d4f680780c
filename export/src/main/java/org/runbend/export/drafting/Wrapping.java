package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Text;

/** Breaks and shortens words by the rough width of letters. */
final class Wrapping {
    private Wrapping() {}

    /** Lines no longer than {@code room} mm; a word longer than that stands alone and sticks out. */
    static List<String> lines(String text, double room, double height) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && Text.roughWidth(longer, height) > room) {
                lines.add(line);
                line = "  " + word;
            } else {
                line = longer;
            }
        }
        lines.add(line);
        return lines;
    }

    /** The text, or as much of it as fits and three dots. */
    static String shortened(String text, double room, double height) {
        if (Text.roughWidth(text, height) <= room) {
            return text;
        }
        int letters = Math.max(0, (int) (room / Text.roughWidth("x", height)) - 3);
        return text.substring(0, text.offsetByCodePoints(0, Math.min(letters, text.codePointCount(0, text.length()))))
                + "...";
    }
}
