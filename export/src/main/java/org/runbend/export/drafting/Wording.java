package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Text;

/** Brings texts of people, up to hundreds of letters long, to a size that leaves room for the floor. */
final class Wording {
    private static final int LABEL = 40;
    private static final int LINE = 60;
    private static final String DOTS = "...";

    private Wording() {}

    /** The text, or its beginning and three dots: the papers have it whole. */
    static String brief(String text) {
        return brief(text, LABEL);
    }

    /** The text, or as much of it as fits into {@code room} mm, and three dots. */
    static String brief(String text, double room, double height) {
        if (Text.roughWidth(text, height) <= room) {
            return text;
        }
        return brief(text, Math.max(0, (int) (room / Text.roughWidth("x", height)) - DOTS.length()));
    }

    /** The text, or so many letters of it and three dots. */
    static String brief(String text, int letters) {
        return text.codePointCount(0, text.length()) <= letters
                ? text
                : text.substring(0, end(text, letters)).strip() + DOTS;
    }

    /** Lines no longer than {@code room} mm, the later ones moved in; a word longer than that stands alone and sticks out. */
    static List<String> lines(String text, double room, double height) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : List.of(text.split(" ", -1))) {
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

    /** Lines of at most 60 letters, broken at blanks, else inside a word. */
    static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        String rest = text.strip();
        while (rest.codePointCount(0, rest.length()) > LINE) {
            int most = end(rest, LINE);
            int blank = rest.lastIndexOf(' ', most);
            int cut = blank > 0 ? blank : most;
            lines.add(rest.substring(0, cut));
            rest = rest.substring(cut).strip();
        }
        lines.add(rest);
        return lines;
    }

    /** Where so many letters end; an accent stays with its letter. */
    private static int end(String text, int letters) {
        int end = text.offsetByCodePoints(0, letters);
        int back = end;
        while (back > 0 && isJoined(text.codePointAt(back))) {
            back = text.offsetByCodePoints(back, -1);
        }
        return back > 0 ? back : end;
    }

    private static boolean isJoined(int letter) {
        return switch (Character.getType(letter)) {
            case Character.NON_SPACING_MARK,
                    Character.ENCLOSING_MARK,
                    Character.COMBINING_SPACING_MARK,
                    Character.FORMAT -> true;
            default -> false;
        };
    }
}
