package org.runbend.export.drawing;

/** Which place of a line of letters lies on its point. Bottom is the baseline, top the top of a capital. */
public enum Anchor {
    /** Start of the baseline. */
    BOTTOM_LEFT(0, 0),
    /** Middle of the baseline. */
    BOTTOM_CENTRE(1, 0),
    /** End of the baseline. */
    BOTTOM_RIGHT(2, 0),
    /** Start, half way up. */
    MIDDLE_LEFT(0, 1),
    /** The middle. */
    MIDDLE_CENTRE(1, 1),
    /** End, half way up. */
    MIDDLE_RIGHT(2, 1),
    /** Start of the top. */
    TOP_LEFT(0, 2),
    /** Middle of the top. */
    TOP_CENTRE(1, 2),
    /** End of the top. */
    TOP_RIGHT(2, 2);

    private final int column;
    private final int row;

    Anchor(int column, int row) {
        this.column = column;
        this.row = row;
    }

    /** 0 left, 1 centre, 2 right. */
    public int column() {
        return column;
    }

    /** 0 bottom, 1 middle, 2 top. */
    public int row() {
        return row;
    }
}
