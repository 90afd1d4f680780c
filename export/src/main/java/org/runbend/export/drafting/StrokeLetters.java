package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;

/**
 * Letters of single strokes, for engraving: capitals, digits and a few signs on a grid of 4 x 6, drawn by us. What is not
 * among them becomes a dash, an accented letter its plain one.
 */
final class StrokeLetters {
    private static final double HIGH = 6;
    private static final double ADVANCE = 6;

    /** Strokes of each letter: corners as two digits, x 0 to 4 and y 0 to 6, strokes with blanks between. */
    private static final Map<Character, String> STROKES = Map.ofEntries(
            Map.entry('A', "002640 1333"),
            Map.entry('B', "00063645443303 3342413000"),
            Map.entry('C', "4536160501103041"),
            Map.entry('D', "00062644422000"),
            Map.entry('E', "46060040 0333"),
            Map.entry('F', "460600 0333"),
            Map.entry('G', "45361605011030414323"),
            Map.entry('H', "0006 4046 0343"),
            Map.entry('I', "1030 2026 1636"),
            Map.entry('J', "0110304146"),
            Map.entry('K', "0006 4602 1340"),
            Map.entry('L', "060040"),
            Map.entry('M', "0006234640"),
            Map.entry('N', "00064046"),
            Map.entry('O', "100105163645413010"),
            Map.entry('P', "00063645443303"),
            Map.entry('Q', "100105163645413010 2240"),
            Map.entry('R', "00063645443303 2340"),
            Map.entry('S', "011030414233130405163645"),
            Map.entry('T', "0646 2620"),
            Map.entry('U', "060110304146"),
            Map.entry('V', "062046"),
            Map.entry('W', "0610233046"),
            Map.entry('X', "0046 0640"),
            Map.entry('Y', "062346 2320"),
            Map.entry('Z', "06460040"),
            Map.entry('0', "100105163645413010 1234"),
            Map.entry('1', "142620 1030"),
            Map.entry('2', "051636454400 0040"),
            Map.entry('3', "06462333424130 1001 3010"),
            Map.entry('4', "30360242"),
            Map.entry('5', "460603334241301001"),
            Map.entry('6', "4536160501103041423303"),
            Map.entry('7', "064610"),
            Map.entry('8', "130405163645443313020110304142 4233"),
            Map.entry('9', "0110304145361605041343"),
            Map.entry('-', "1333"),
            Map.entry('.', "2021"),
            Map.entry('/', "0046"),
            Map.entry('+', "0343 2125"),
            Map.entry('(', "36151130"),
            Map.entry(')', "16353110"),
            Map.entry(':', "2122 2425"),
            Map.entry(',', "2110"),
            Map.entry('=', "0242 0444"));

    private StrokeLetters() {}

    /** The strokes of a line whose baseline begins at a place, with capitals of a height, mm. */
    static List<Path> of(Point at, double height, String words) {
        double unit = height / HIGH;
        List<Path> strokes = new ArrayList<>();
        String plain = plain(words);
        for (int i = 0; i < plain.length(); i++) {
            String glyph = plain.charAt(i) == ' ' ? "" : STROKES.getOrDefault(plain.charAt(i), STROKES.get('-'));
            for (String stroke : glyph.split(" ", -1)) {
                List<Point> corners = new ArrayList<>();
                for (int k = 0; k + 1 < stroke.length(); k += 2) {
                    double x = i * ADVANCE + Character.digit(stroke.charAt(k), 10);
                    double y = Character.digit(stroke.charAt(k + 1), 10);
                    corners.add(at.plus(x * unit, y * unit));
                }
                if (corners.size() > 1) {
                    strokes.add(path(corners));
                }
            }
        }
        return strokes;
    }

    /** A stroke that comes back to its start is closed, so that nothing of no length is left. */
    private static Path path(List<Point> corners) {
        int last = corners.size() - 1;
        return corners.get(0).equals(corners.get(last))
                ? Path.polygon(corners.subList(0, last))
                : Path.polyline(corners);
    }

    /** How long a line gets, mm. */
    static double width(String words, double height) {
        return Math.max(0, plain(words).length() * ADVANCE - 2) * height / HIGH;
    }

    private static String plain(String words) {
        return java.text.Normalizer.normalize(words, java.text.Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toUpperCase(Locale.ROOT);
    }
}
