package org.runbend.optimizer.day;

import java.util.List;
import org.runbend.optimizer.cutting.Stock;

/**
 * All cuts of one product for a day.
 *
 * @param product part number
 * @param stock what they can be cut from: pieces of the shelf at no cost, whole ones at what a new one costs
 * @param cuts what is wanted, order by order
 * @param kerf lost by every cut
 * @param trim lost once on every stock that is cut
 * @param keepFrom a rest from here on is kept
 */
public record DayMaterial(String product, List<Stock> stock, List<DayCut> cuts, long kerf, long trim, long keepFrom) {
    /** Copies the lists. */
    public DayMaterial {
        stock = List.copyOf(stock);
        cuts = List.copyOf(cuts);
    }
}
