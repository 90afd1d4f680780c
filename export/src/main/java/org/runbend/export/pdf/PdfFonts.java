package org.runbend.export.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The two fonts of a document, DejaVu Sans and its bold, embedded as subsets. Fonts belong to one document. Letters that
 * the font lacks are shown as a mark, control characters as blanks: nothing that a person types can stop a paper.
 */
final class PdfFonts {
    private static final int MARK = 0xFFFD;
    /** Between words; a fraction stays with its whole number: 5 7/8. */
    static final Pattern BLANKS = Pattern.compile("\\s+(?!(?<=\\d )\\d+/\\d)");

    private final Face regular;
    private final Face bold;

    PdfFonts(PDDocument document) {
        regular = Face.load(document, "DejaVuSans.ttf");
        bold = Face.load(document, "DejaVuSans-Bold.ttf");
    }

    PDFont font(boolean strong) {
        return face(strong).font();
    }

    /** The text with only letters that the font has. */
    String showable(String text, boolean strong) {
        CmapLookup letters = face(strong).letters();
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c)) {
                out.append(' ');
            } else if (Character.getType(c) != Character.FORMAT) {
                out.appendCodePoint(letters.getGlyphId(c) == 0 ? MARK : c);
            }
        });
        return out.toString();
    }

    /** Length of a line, mm. */
    double width(String text, TextStyle style) {
        try {
            float units = font(style.strong()).getStringWidth(showable(text, style.strong()));
            return units / 1000 * style.size() * 25.4 / 72;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Breaks a text into lines at most {@code room} mm long: at line breaks, at blanks, else inside a word. */
    List<String> wrap(String text, TextStyle style, double room) {
        List<String> lines = new ArrayList<>();
        text.lines().forEach(line -> wrapLine(lines, line, style, room));
        return lines.isEmpty() ? List.of("") : lines;
    }

    private void wrapLine(List<String> lines, String text, TextStyle style, double room) {
        String line = "";
        for (String word : BLANKS.split(text.strip(), -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, style) > room && !line.isEmpty()) {
                lines.add(line);
                longer = word;
            }
            while (width(longer, style) > room && longer.codePointCount(0, longer.length()) > 1) {
                int cut = longestStart(longer, style, room);
                lines.add(longer.substring(0, cut));
                longer = longer.substring(cut);
            }
            line = longer;
        }
        lines.add(line);
    }

    private int longestStart(String word, TextStyle style, double room) {
        int cut = word.offsetByCodePoints(0, 1);
        while (cut < word.length()) {
            int next = word.offsetByCodePoints(cut, 1);
            if (width(word.substring(0, next), style) > room) {
                return cut;
            }
            cut = next;
        }
        return cut;
    }

    private Face face(boolean strong) {
        return strong ? bold : regular;
    }

    private record Face(PDFont font, CmapLookup letters) {
        static Face load(PDDocument document, String resource) {
            try (InputStream in = PdfFonts.class.getResourceAsStream(resource)) {
                TrueTypeFont ttf = new TTFParser().parse(new RandomAccessReadBuffer(in));
                ttf.setEnableGsub(false); // ligatures would come back as one letter when text is searched or copied
                return new Face(PDType0Font.load(document, ttf, true), ttf.getUnicodeCmapLookup());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
