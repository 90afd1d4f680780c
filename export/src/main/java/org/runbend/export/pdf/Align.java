package org.runbend.export.pdf;

/** Which side a line of letters keeps to. */
public enum Align {
    /** Left. */
    LEFT(0),
    /** Centre. */
    CENTRE(0.5),
    /** Right. */
    RIGHT(1);

    private final double share;

    Align(double share) {
        this.share = share;
    }

    /** Share of the free room that goes before the letters. */
    public double share() {
        return share;
    }
}
