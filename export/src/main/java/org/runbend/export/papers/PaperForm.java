package org.runbend.export.papers;

import org.runbend.export.pdf.Paper;

/**
 * How papers are wanted.
 *
 * @param paper what they are printed on
 * @param prices whether the pick list says prices
 */
public record PaperForm(Paper paper, boolean prices) {
    /** A4 without prices. */
    public static final PaperForm USUAL = new PaperForm(Paper.A4, false);
}
