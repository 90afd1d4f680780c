package org.runbend.optimizer.cutting;

import java.util.List;
import java.util.Objects;

/**
 * A cutting plan.
 *
 * @param cuts one entry for each stock piece used, by stock index
 * @param cost of the stock used, minor units
 * @param scrap sum of the leftovers that are not kept, hundredths of mm
 * @param opened how many stock pieces are new, with no id of their own
 * @param patterns how many different ways of cutting a stock piece there are, equal stock and equal lengths not told apart
 * @param costBound no plan costs less
 * @param scrapBound no plan of this cost has less scrap (0 when nothing better is proved)
 * @param openedBound no plan of this cost and scrap opens fewer new ones (0 when nothing better is proved)
 * @param patternsBound no plan of this cost, scrap and number has fewer patterns (0 when nothing better is proved)
 */
public record CuttingSolution(
        List<StockCut> cuts,
        long cost,
        long scrap,
        int opened,
        int patterns,
        Bound costBound,
        Bound scrapBound,
        Bound openedBound,
        Bound patternsBound) {
    /** Copies the list and refuses a bound above its value. */
    public CuttingSolution {
        cuts = List.copyOf(cuts);
        Objects.requireNonNull(costBound, "costBound");
        Objects.requireNonNull(scrapBound, "scrapBound");
        Objects.requireNonNull(openedBound, "openedBound");
        Objects.requireNonNull(patternsBound, "patternsBound");
        Require.that(costBound.value() <= cost, "bound (%d) above cost (%d)", costBound.value(), cost);
        Require.that(scrapBound.value() <= scrap, "bound (%d) above scrap (%d)", scrapBound.value(), scrap);
        Require.that(openedBound.value() <= opened, "bound (%d) above opened (%d)", openedBound.value(), opened);
        Require.that(
                patternsBound.value() <= patterns, "bound (%d) above patterns (%d)", patternsBound.value(), patterns);
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
