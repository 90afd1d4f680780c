package org.runbend.export.papers;

import java.util.Optional;
import org.runbend.export.pdf.Paper;

/**
 * How papers are wanted.
 *
 * @param paper what they are printed on
 * @param prices whether the pick list says prices
 * @param day the day that the kit is cut with, so that its coils and plates are those of the day sheet
 */
public record PaperForm(Paper paper, boolean prices, Optional<String> day) {
    /** A4 without prices. */
    public static final PaperForm USUAL = new PaperForm(Paper.A4, false);

    /** Papers of a kit that is cut by itself. */
    public PaperForm(Paper paper, boolean prices) {
        this(paper, prices, Optional.empty());
    }

    /** What papers say where the kit is cut with others. */
    Optional<String> cutWithDay() {
        return day.map(d -> "Cut as on the day sheet of " + d
                + ": it says which coils and plates are taken and where they are cut. Those named here hold for this kit cut by"
                + " itself.");
    }
}
