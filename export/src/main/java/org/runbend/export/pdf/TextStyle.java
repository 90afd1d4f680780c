package org.runbend.export.pdf;

/** How letters look: bold or not, size in points, colour 0xRRGGBB. */
public record TextStyle(boolean strong, double size, int colour) {
    /** Name of a paper. */
    public static final TextStyle TITLE = new TextStyle(true, 17, 0x1A1A1A);

    /** Heading of a part. */
    public static final TextStyle HEADING = new TextStyle(true, 11.5, 0x1A1A1A);

    /** Running text and tables. */
    public static final TextStyle BODY = new TextStyle(false, 9, 0x1A1A1A);

    /** Footers and remarks. */
    public static final TextStyle SMALL = new TextStyle(false, 7.5, 0x555555);

    /** Checks the size. */
    public TextStyle {
        if (!(size > 0)) {
            throw new IllegalArgumentException("text size (" + size + " pt) must be over 0");
        }
    }

    /** The same in bold. */
    public TextStyle bold() {
        return new TextStyle(true, size, colour);
    }

    /** The same in another size, points. */
    public TextStyle sized(double points) {
        return new TextStyle(strong, points, colour);
    }

    /** The same in another colour. */
    public TextStyle coloured(int rgb) {
        return new TextStyle(strong, size, rgb);
    }

    /** From baseline to baseline, mm. */
    public double pitch() {
        return size * 1.32 * 25.4 / 72;
    }

    /** From the top of the line to its baseline, mm. */
    public double ascent() {
        return size * 0.95 * 25.4 / 72;
    }
}
