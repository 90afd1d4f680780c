package org.runbend.export.pdf;

/** A size of paper that offices print on. */
public enum Paper {
    /** ISO 216, 210 x 297 mm. */
    A4(210, 297),
    /** US Letter, 8.5 x 11 inches. */
    LETTER(215.9, 279.4);

    private static final double UPRIGHT_MARGIN = 15;
    private static final double WIDE_MARGIN = 12;

    private final double width;
    private final double height;

    Paper(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /** Standing. */
    public PageFormat upright() {
        return new PageFormat(width, height, UPRIGHT_MARGIN);
    }

    /** Lying. */
    public PageFormat wide() {
        return new PageFormat(width, height, WIDE_MARGIN).turned();
    }
}
