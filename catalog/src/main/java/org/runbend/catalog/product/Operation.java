package org.runbend.catalog.product;

/** What a machine does along the lines of a layer of a drawing that is cut from. */
public enum Operation {
    /** Cut through, the tool outside the closed line. */
    CUT(7),
    /** Cut through, the tool inside the closed line. */
    HOLE(1),
    /** Cleared to a depth, the tool inside the closed line. */
    POCKET(134),
    /** Cleared like a pocket that slopes from its depth to the bottom of the board. */
    RAMP(44),
    /** Single strokes to be engraved or drawn with a pen. */
    LABEL(160),
    /** Words for people; nothing is cut. */
    NOTE(8);

    private final int colour;

    Operation(int colour) {
        this.colour = colour;
    }

    /** Index of its colour, 1 to 255, where the workshop gives none. */
    int colour() {
        return colour;
    }

    /** Whether its layers carry a tool and a depth. */
    public boolean isMilled() {
        return this != LABEL && this != NOTE;
    }
}
