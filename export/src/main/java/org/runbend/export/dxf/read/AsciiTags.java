package org.runbend.export.dxf.read;

import java.nio.charset.StandardCharsets;

/** Tags of an ASCII file: two lines each; lines end with LF, CR LF or CR. */
final class AsciiTags extends TagSource {
    private int at;
    private int line;
    private int codeLine;
    private int from;
    private int to;

    AsciiTags(byte[] data, int start) {
        super(data);
        at = start;
    }

    @Override
    boolean next() {
        if (!nextLine()) {
            return false;
        }
        codeLine = line;
        int code = codeOf(from, to);
        if (code == Integer.MIN_VALUE) {
            if (isBlank(from)) {
                return false;
            }
            throw brokenAt(
                    line,
                    DxfFault.quoted(text()) + " stands where a group code is wanted, a whole number"
                            + (line == 1 ? "; this is no DXF file" : ""));
        }
        code(code);
        if (!nextLine()) {
            throw brokenAt(line, "the file ends within a pair of group code and value; it was cut off");
        }
        return true;
    }

    private boolean nextLine() {
        if (at >= data.length) {
            return false;
        }
        from = at;
        int i = at;
        while (i < data.length && data[i] != '\n' && data[i] != '\r') {
            i++;
        }
        to = i;
        boolean pair = i + 1 < data.length && data[i] == '\r' && data[i + 1] == '\n';
        at = i + (pair ? 2 : 1);
        line++;
        return true;
    }

    /** The number between the blanks, or the least int if there is none. */
    private int codeOf(int start, int end) {
        int i = start;
        while (i < end && (data[i] == ' ' || data[i] == '\t')) {
            i++;
        }
        boolean negative = i < end && data[i] == '-';
        int first = negative ? i + 1 : i;
        int value = 0;
        int j = first;
        while (j < end && data[j] >= '0' && data[j] <= '9' && j - first < 6) {
            value = 10 * value + data[j] - '0';
            j++;
        }
        boolean any = j > first;
        while (j < end && (data[j] == ' ' || data[j] == '\t')) {
            j++;
        }
        return any && j == end ? (negative ? -value : value) : Integer.MIN_VALUE;
    }

    private boolean isBlank(int start) {
        for (int i = start; i < data.length; i++) {
            if (data[i] > ' '
                    || (data[i] < ' ' && data[i] != '\n' && data[i] != '\r' && data[i] != 0x1A && data[i] != 0)) {
                return false;
            }
        }
        return true;
    }

    @Override
    double number() {
        double value = Numbers.parse(data, from, to);
        if (Double.isNaN(value)) {
            String text = text();
            throw brokenAt(
                    line,
                    "group " + code() + ": " + DxfFault.quoted(text) + " is no number"
                            + (text.indexOf(',') >= 0 ? "; a point is wanted, not a comma" : ""));
        }
        return value;
    }

    @Override
    int place() {
        return codeLine;
    }

    @Override
    String placeWord() {
        return "line";
    }

    @Override
    int from() {
        return from;
    }

    @Override
    int to() {
        return to;
    }

    /** Whether a file begins like an ASCII drawing: with a group code on a line of its own. */
    static boolean beginsWithCode(byte[] data, int start) {
        AsciiTags tags = new AsciiTags(data, start);
        return tags.nextLine() && tags.codeOf(tags.from, tags.to) >= 0;
    }

    /** The first letters of a file, for a message. */
    static String beginning(byte[] data) {
        return new String(data, 0, Math.min(data.length, 20), StandardCharsets.ISO_8859_1);
    }
}
