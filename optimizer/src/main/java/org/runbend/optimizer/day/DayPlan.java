package org.runbend.optimizer.day;

import java.util.List;
import org.runbend.optimizer.cutting.Bound;

/**
 * How a day's cuts of one product are made.
 *
 * @param product part number
 * @param uses stock pieces, those of the shelf first
 * @param cost of the whole ones, minor units
 * @param bound no plan costs less
 */
public record DayPlan(String product, List<DayUse> uses, long cost, Bound bound) {
    /** Copies the list and refuses a bound above the cost. */
    public DayPlan {
        uses = List.copyOf(uses);
        if (bound.value() > cost) {
            throw new IllegalArgumentException(product + ": bound above cost");
        }
    }

    /** The same plan with another bound, where that says more. */
    DayPlan withBound(Bound other) {
        Bound more = bound.max(new Bound(Math.min(cost, other.value()), other.proof()));
        return new DayPlan(product, uses, cost, more);
    }
}
