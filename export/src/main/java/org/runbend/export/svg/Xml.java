package org.runbend.export.svg;

/** Text for XML: markup escaped, characters that XML 1.0 does not allow left out. */
final class Xml {
    private Xml() {}

    static String escape(String foreign) {
        StringBuilder out = new StringBuilder();
        foreign.codePoints().forEach(c -> append(out, c));
        return out.toString();
    }

    private static void append(StringBuilder out, int c) {
        if (c == '&') {
            out.append("&amp;");
        } else if (c == '<') {
            out.append("&lt;");
        } else if (c == '>') {
            out.append("&gt;");
        } else if (c == '"') {
            out.append("&quot;");
        } else if (c == '\'') {
            out.append("&#39;");
        } else if (Character.isISOControl(c) || isTurn(c)) {
            out.append(' ');
        } else if (c < 0xD800 || (c >= 0xE000 && c != 0xFFFE && c != 0xFFFF)) {
            out.appendCodePoint(c);
        }
    }

    /** Overrides and isolates of the direction of writing (UAX 9), which could turn what stands beside them. */
    private static boolean isTurn(int c) {
        return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
    }
}
