package org.runbend.optimizer.day;

import java.util.List;
import org.runbend.optimizer.cutting.Stock;

/**
 * A stock piece and what is cut from it.
 *
 * @param stock the piece, or the kind of a whole one
 * @param cuts in the order of cutting: longest first
 * @param leftover hundredths of mm after trim, cuts and kerfs
 */
public record DayUse(Stock stock, List<DayCut> cuts, long leftover) {
    /** Copies the list. */
    public DayUse {
        cuts = List.copyOf(cuts);
    }
}
