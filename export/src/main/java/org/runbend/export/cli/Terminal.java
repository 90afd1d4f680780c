package org.runbend.export.cli;

/** What may reach a terminal. */
final class Terminal {
    /** Marks, embeddings, overrides and isolates of Unicode's bidirectional algorithm (UAX 9), and the byte-order mark. */
    private static final String DIRECTION = "\\x{61C}\\x{200E}\\x{200F}\\x{202A}-\\x{202E}\\x{2066}-\\x{2069}\\x{FEFF}";

    private Terminal() {}

    /** As {@link #plain}, without blanks at both ends; empty for none. */
    static String oneLine(String text) {
        return text == null ? "" : plain(text).strip();
    }

    /**
     * The text on one line. Names from files may hold anything: control letters, line separators of all scripts and what
     * turns the direction of writing become blanks, halves of surrogate pairs a question mark.
     */
    static String plain(String text) {
        return text.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}" + DIRECTION + "]+", " ").replaceAll("\\p{Cs}", "?");
    }
}
