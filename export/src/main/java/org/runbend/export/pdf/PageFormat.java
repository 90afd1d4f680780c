package org.runbend.export.pdf;

/** Size of a page and its margin all round, mm. */
public record PageFormat(double width, double height, double margin) {
    /** A page over 14400 points is not portable (limit of the format, ISO 32000-1 annex C), mm. */
    public static final double LONGEST = 14400 * 25.4 / 72;

    /** Checks the size. */
    public PageFormat {
        if (!(width > 2 * margin) || !(height > 2 * margin) || width > LONGEST || height > LONGEST) {
            throw new IllegalArgumentException("page of " + width + " x " + height + " mm with a margin of " + margin
                    + " mm: must hold its margins and be at most 5080 mm long");
        }
    }

    /** The same page with another margin, mm. */
    public PageFormat withMargin(double other) {
        return new PageFormat(width, height, other);
    }

    /** The same page lying instead of standing, or the other way round. */
    public PageFormat turned() {
        return new PageFormat(/* width= */ height, /* height= */ width, margin);
    }

    /** What lies inside the margins. */
    public Box inside() {
        return new Box(margin, margin, width - 2 * margin, height - 2 * margin);
    }
}
