package org.runbend.catalog.product;

/**
 * A sheet of labels to print on.
 *
 * @param letter whether it is US Letter (215.9 x 279.4 mm), else ISO 216 A4
 * @param columns labels side by side
 * @param rows labels one over the other
 * @param width of a label, mm
 * @param height of a label, mm
 * @param left from the sheet's left edge to the first label, mm
 * @param top from its upper edge, mm
 * @param stepAcross from a label's left edge to that of the next, mm
 * @param stepDown likewise downwards, mm
 */
public record LabelSheet(
        boolean letter,
        int columns,
        int rows,
        double width,
        double height,
        double left,
        double top,
        double stepAcross,
        double stepDown) {
    private static final double ROUNDING = 0.5;
    private static final double A4_WIDTH = 210;
    private static final double A4_HEIGHT = 297;
    private static final double LETTER_WIDTH = 215.9;
    private static final double LETTER_HEIGHT = 279.4;
    private static final double LEAST_WIDTH = 45;
    private static final double LEAST_HEIGHT = 25;

    /** 24 labels of 70 x 37 mm on A4, a size that many makers sell (common practice). */
    public static final LabelSheet USUAL = new LabelSheet(false, 3, 8, 70, 37, 0, 0.5, 70, 37);

    /** Checks that labels lie on the sheet, do not overlap and hold what they say. */
    public LabelSheet {
        Require.that(columns >= 1 && rows >= 1 && columns * rows <= 200, "labels: 1 to 200 on a sheet");
        Require.that(
                width >= LEAST_WIDTH && height >= LEAST_HEIGHT,
                "labels of %s x %s mm: name and code need 45 x 25 mm",
                width,
                height);
        Require.that(stepAcross >= width && stepDown >= height, "labels: steps are shorter than the labels");
        double right = left + (columns - 1) * stepAcross + width;
        double bottom = top + (rows - 1) * stepDown + height;
        double wide = letter ? LETTER_WIDTH : A4_WIDTH;
        double high = letter ? LETTER_HEIGHT : A4_HEIGHT;
        Require.that(
                left >= 0 && top >= 0 && right <= wide + ROUNDING && bottom <= high + ROUNDING,
                "labels reach to %s x %s mm, the sheet is %s x %s mm",
                right,
                bottom,
                wide,
                high);
    }

    /** Width of the sheet, mm. */
    public double sheetWidth() {
        return letter ? LETTER_WIDTH : A4_WIDTH;
    }

    /** Height of the sheet, mm. */
    public double sheetHeight() {
        return letter ? LETTER_HEIGHT : A4_HEIGHT;
    }
}
