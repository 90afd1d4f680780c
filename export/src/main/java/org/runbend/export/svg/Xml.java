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
        } else if (Character.isISOControl(c)) {
            out.append(' ');
        } else if (c < 0xD800 || (c >= 0xE000 && c != 0xFFFE && c != 0xFFFF)) {
            out.appendCodePoint(c);
        }
    }
}
