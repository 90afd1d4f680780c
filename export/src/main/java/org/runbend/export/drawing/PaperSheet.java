package org.runbend.export.drawing;

/**
 * A sheet of paper to print a drawing on: what stands on the paper itself, mm from its lower left corner, and the window
 * through which the drawing is seen.
 *
 * @param name short ASCII name, such as A3
 * @param width mm
 * @param height mm
 * @param marks border, title and words, in mm of paper
 * @param window the place of the window on the paper, mm
 * @param middle the point of the drawing in the middle of the window, mm
 * @param scale mm of the drawing for a mm of paper, over 0
 */
public record PaperSheet(
        String name, double width, double height, Sheet marks, Extent window, Point middle, double scale) {
    /** Checks sizes. */
    public PaperSheet {
        if (!(width > 0) || !(height > 0) || !(scale > 0)) {
            throw new IllegalArgumentException("paper " + name + ": sizes (" + width + " x " + height + ") and scale ("
                    + scale + ") must be over 0");
        }
    }
}
