package org.runbend.optimizer.cutting;

import java.util.List;
import java.util.Objects;

/**
 * A cutting plan.
 *
 * @param cuts one entry for each stock piece used, by stock index
 * @param cost of the stock used, minor units
 * @param scrap sum of the leftovers that are not kept, hundredths of mm
 * @param costBound no plan costs less
 * @param scrapBound no plan of this cost has less scrap (0 when nothing better is proved)
 */
public record CuttingSolution(List<StockCut> cuts, long cost, long scrap, Bound costBound, Bound scrapBound)
        implements CuttingAnswer {
    /** Copies the list and refuses a bound above its value. */
    public CuttingSolution {
        cuts = List.copyOf(cuts);
        Objects.requireNonNull(costBound, "costBound");
        Objects.requireNonNull(scrapBound, "scrapBound");
        Check.that(costBound.value() <= cost, "bound (%d) above cost (%d)", costBound.value(), cost);
        Check.that(scrapBound.value() <= scrap, "bound (%d) above scrap (%d)", scrapBound.value(), scrap);
    }

    /** True when no plan costs less. */
    public boolean isProvedLeastCost() {
        return cost == costBound.value();
    }

    /** True when no plan costs less, nor as much with less scrap. */
    public boolean isProvedBest() {
        return isProvedLeastCost() && scrap == scrapBound.value();
    }
}
