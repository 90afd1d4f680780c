package org.runbend.optimizer.quote;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.Sales;

/**
 * What a customer is asked for a kit. Amounts in minor units of the catalog's currency; no cost is in it.
 *
 * @param form whether each item has its line, or one line stands for all
 * @param lines what is offered
 * @param discount taken off the sum of the lines, if there is one
 * @param sending what sending costs, and why
 * @param taxName what the tax is called; empty where none is reckoned
 * @param totals sums and tax
 * @param validity how long it holds, in words
 * @param granted what was taken for granted, one sentence each
 * @param failed checks that the plan fails; where there are any, no price is firm
 */
public record Quote(
        Sales.Lines form,
        List<QuoteLine> lines,
        Optional<Discount> discount,
        Sending sending,
        Optional<String> taxName,
        Totals totals,
        String validity,
        List<String> granted,
        List<String> failed) {
    /** Copies the lists. */
    public Quote {
        lines = List.copyOf(lines);
        granted = List.copyOf(granted);
        failed = List.copyOf(failed);
    }

    /** Whether the workshop can be held to it. */
    public boolean isFirm() {
        return failed.isEmpty();
    }

    /**
     * A discount on the whole.
     *
     * @param share of the sum of the lines
     * @param amount rounded half up
     * @param asked whether it was asked for this order; else it goes by the sum
     */
    public record Discount(Rate share, long amount, boolean asked) {}

    /**
     * Sending the kit.
     *
     * @param how how it is priced
     * @param weight of the box without packing, kg
     * @param price 0 unless it goes by weight
     */
    public record Sending(How how, double weight, long price) {}

    /** How sending is priced. */
    public enum How {
        /** By the catalog's steps. */
        BY_WEIGHT,
        /** Free, as the order is large enough. */
        FREE,
        /** Heavier than any step: to be agreed on, not in the price. */
        BY_ARRANGEMENT,
        /** The catalog prices none. */
        NOT_PRICED
    }
}
