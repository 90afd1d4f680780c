package org.runbend.export.dxf;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Makes any string fit for a file. Letters beyond ASCII become {@code \}{@code U+XXXX} (UTF-16 units, four hex digits), the
 * one escape that AC1015 has for them. What a reader could take for a command is made harmless in a way that no reader
 * can undo: no encoding of a literal {@code %%c} or backslash is read alike everywhere, so they are shown as their
 * nearest neighbours.
 */
final class DxfText {
    /** Readers may hold one value in 2049 bytes (limit of the format, from memory); stay well below. */
    private static final int LONGEST = 1800;

    /** MTEXT is cut into pieces of this length by the format. */
    private static final int CHUNK = 250;

    /** Letters and signs of the trade that no decomposition gives. */
    private static final Map<Integer, Integer> NEAREST = Map.of(
            0xD8,
            (int) 'O',
            0xF8,
            (int) 'o',
            0x141,
            (int) 'L',
            0x142,
            (int) 'l',
            0xDF,
            (int) 's',
            0xD7,
            (int) 'x',
            0x2013,
            (int) '-',
            0x2014,
            (int) '-',
            0x2019,
            (int) '\'',
            0x2212,
            (int) '-');

    private DxfText() {}

    /** One line for TEXT and names of things: no line breaks, no {@code %%} codes, no backslash, no bare caret. */
    static String line(String foreign) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < foreign.length() && out.length() < LONGEST; i++) {
            char c = foreign.charAt(i);
            if (c == '%' && i > 0 && foreign.charAt(i - 1) == '%') {
                out.append(' ');
            }
            out.append(harmless(c));
        }
        return out.toString();
    }

    /** As {@link #line} in pure ASCII: letters lose their accents, what has no nearest letter becomes a question mark. */
    static String asciiLine(String foreign) {
        String bare = Normalizer.normalize(foreign, Normalizer.Form.NFKD).replaceAll("\\p{M}+", "");
        StringBuilder out = new StringBuilder();
        bare.codePoints().forEach(c -> out.appendCodePoint(c < 0x7F ? c : NEAREST.getOrDefault(c, (int) '?')));
        return line(out.toString());
    }

    /** A line for MTEXT: as {@link #line}, and braces, which group there, become parentheses. */
    static String multiLine(String foreign) {
        return line(foreign.replace('{', '(').replace('}', ')'));
    }

    /** Writes MTEXT content: pieces under code 3, the last one under 1; never cut inside an escape. */
    static void chunks(Tags tags, String content) {
        String rest = content;
        while (rest.length() > CHUNK) {
            int cut = CHUNK;
            int escape = rest.lastIndexOf('\\', cut - 1);
            if (escape > 0 && cut - escape < 7) {
                cut = escape;
            }
            tags.put(3, rest.substring(0, cut));
            rest = rest.substring(cut);
        }
        tags.put(1, rest);
    }

    /** A text in parts of at most 250 letters, never cut inside an escape. */
    static List<String> parts(String line) {
        List<String> parts = new ArrayList<>();
        String rest = line;
        while (rest.length() > CHUNK) {
            int escape = rest.lastIndexOf('\\', CHUNK - 1);
            int cut = escape > 0 && CHUNK - escape < 7 ? escape : CHUNK;
            parts.add(rest.substring(0, cut));
            rest = rest.substring(cut);
        }
        parts.add(rest);
        return parts;
    }

    private static String harmless(char c) {
        if (Character.isISOControl(c) || (c >= '\u2028' && c <= '\u202E') || (c >= '\u2066' && c <= '\u2069')) {
            // line separators, and what turns the direction of writing (UAX 9)
            return " ";
        }
        if (c == '\\') {
            return "/";
        }
        if (c == '^') { // caret and letter is a control character in the format, caret and blank a caret
            return "^ ";
        }
        return c < 0x7F ? String.valueOf(c) : String.format(Locale.ROOT, "\\U+%04X", (int) c);
    }
}
