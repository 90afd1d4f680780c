package org.runbend.catalog.source;

import java.io.Reader;

/**
 * A text that is read in pieces none of which ends within a surrogate pair. The parser of YAML reads pieces of its buffer's
 * size and has no room for the second half of a letter that begins at the buffer's end.
 */
final class WholeLetters extends Reader {
    private final String text;
    private int at;

    WholeLetters(String text) {
        this.text = text;
    }

    @Override
    public int read(char[] buffer, int offset, int length) {
        if (at == text.length()) {
            return length == 0 ? 0 : -1;
        }
        int end = Math.min(text.length(), at + length);
        boolean torn = end < text.length() && end > at + 1 && Character.isHighSurrogate(text.charAt(end - 1));
        int count = end - at - (torn ? 1 : 0);
        text.getChars(at, at + count, buffer, offset);
        at += count;
        return count;
    }

    @Override
    public void close() {}
}
