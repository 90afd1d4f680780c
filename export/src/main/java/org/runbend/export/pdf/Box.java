package org.runbend.export.pdf;

/** A place on a page: lower left corner and size, mm. */
public record Box(double x, double y, double width, double height) {
    /** Refuses a box of no size. */
    public Box {
        if (!(width > 0) || !(height > 0)) {
            throw new IllegalArgumentException("box of " + width + " x " + height + " mm has no size");
        }
    }
}
