package org.runbend.export.dxf.read;

import java.nio.charset.Charset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What letters cannot be written as they are in a drawing, and what commands stand among them. */
final class Escapes {
    private static final Pattern UNICODE = Pattern.compile("\\\\U\\+([0-9A-Fa-f]{4})");
    private static final Pattern MULTI_BYTE = Pattern.compile("\\\\M\\+([1-5])([0-9A-Fa-f]{4})");
    private static final String[] PAGES = {"ANSI_932", "ANSI_950", "ANSI_949", "ANSI_1361", "ANSI_936"};
    private static final Pattern PERCENT = Pattern.compile("%%(\\d{3}|.)");
    private static final Pattern CARET = Pattern.compile("\\^(.)");

    private Escapes() {}

    /** Text with {@code \}{@code U+XXXX} (UTF-16 units) and {@code \M+nXXXX} (two bytes of an eastern code page) resolved. */
    static String unicode(String text) {
        if (text.indexOf('\\') < 0) {
            return text;
        }
        String done = UNICODE.matcher(text)
                .replaceAll(m -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(m.group(1), 16))));
        return MULTI_BYTE.matcher(done).replaceAll(m -> Matcher.quoteReplacement(twoBytes(m.group(1), m.group(2))));
    }

    private static String twoBytes(String page, String hex) {
        int value = Integer.parseInt(hex, 16);
        Charset charset = Letters.page(PAGES[Integer.parseInt(page) - 1]);
        byte[] bytes = value > 255 ? new byte[] {(byte) (value >> 8), (byte) value} : new byte[] {(byte) value};
        return new String(bytes, charset);
    }

    /** A line of TEXT: {@code %%d}, {@code %%c}, {@code %%p}, {@code %%nnn}, carets and code points resolved. */
    static String line(String text) {
        String done = unicode(text);
        if (done.indexOf('%') >= 0) {
            done = PERCENT.matcher(done).replaceAll(m -> Matcher.quoteReplacement(percent(m.group(1))));
        }
        return carets(done);
    }

    private static String percent(String code) {
        if (code.length() == 3) {
            return String.valueOf((char) Integer.parseInt(code));
        }
        return switch (code) {
            case "c", "C" -> "\u00D8";
            case "d", "D" -> "\u00B0";
            case "p", "P" -> "\u00B1";
            case "%" -> "%";
            default -> ""; // %%u, %%o, %%k switch lines under, over and through the text
        };
    }

    private static String carets(String text) {
        if (text.indexOf('^') < 0) {
            return text;
        }
        return CARET.matcher(text).replaceAll(m -> m.group(1).equals(" ") ? "^" : " ");
    }

    /** Lines of MTEXT: paragraphs become line feeds, format commands go, stacked fractions become a/b. */
    static String paragraphs(String text) {
        String source = unicode(text);
        StringBuilder out = new StringBuilder();
        int i = 0;
        while (i < source.length()) {
            char c = source.charAt(i);
            if (c == '\\' && i + 1 < source.length()) {
                i = command(source, i + 1, out);
            } else {
                if (c != '{' && c != '}') {
                    out.append(c);
                }
                i++;
            }
        }
        return line(out.toString());
    }

    /** Handles the command whose letter is at i; gives where to go on. */
    private static int command(String source, int i, StringBuilder out) {
        char c = source.charAt(i);
        switch (c) {
            case 'P', 'N', 'X' -> out.append('\n');
            case '~' -> out.append(' ');
            case '\\', '{', '}' -> out.append(c);
            case 'A', 'C', 'c', 'F', 'f', 'H', 'p', 'Q', 'T', 'W', 'S' -> {
                int end = source.indexOf(';', i);
                if (end < 0) {
                    return source.length();
                }
                if (c == 'S') {
                    out.append(source.substring(i + 1, end).replaceAll("[\\^#] ?", "/"));
                }
                return end + 1;
            }
            default -> {
                // \L, \O, \K and their ends switch lines; an unknown command has no letters of its own
            }
        }
        return i + 1;
    }
}
