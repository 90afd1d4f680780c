package org.runbend.catalog.ledger;

/** What may be entered: texts of a line, amounts that sums of which stay far inside a long. */
final class Entry {
    /** 10 km, hundredths of mm: no coil is longer. */
    static final long LONGEST = 1_000_000_000L;
    /** Most of one thing in one entry. */
    static final long MOST = 1_000_000_000L;

    private static final int LETTERS = 200;

    private Entry() {}

    static void that(boolean right, String wrong) {
        if (!right) {
            throw new LedgerRefused(wrong);
        }
    }

    /** A text on one line of at most 200 letters. */
    static void text(String what, String text, boolean mayBeEmpty) {
        that(mayBeEmpty || !text.isBlank(), what + " is missing");
        that(text.equals(text.strip()), what + " has blanks at its ends");
        that(text.codePointCount(0, text.length()) <= LETTERS, what + " is longer than " + LETTERS + " letters");
        that(
                text.codePoints()
                        .noneMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE),
                what + " holds a letter that cannot be printed");
    }
}
