package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The terms that a workshop sells on. Amounts are minor units of the catalog's currency, net of tax.
 *
 * @param tax rate of the tax on everything sold, goods and freight alike; empty: none is reckoned
 * @param taxName what papers call it
 * @param lines how a quotation shows prices
 * @param discounts by the sum of the lines, the lowest sum first
 * @param freight what sending costs
 * @param validDays how long a quotation holds
 */
public record Sales(
        Optional<Rate> tax, String taxName, Lines lines, List<Discount> discounts, Freight freight, int validDays) {
    /** A month, as is common practice. */
    public static final int USUAL_DAYS = 30;

    /** Terms of a catalog that names none: no tax, no discount, freight not priced. */
    public static final Sales PLAIN =
            new Sales(Optional.empty(), "tax", Lines.ITEMS, List.of(), Freight.NONE, USUAL_DAYS);

    /** How a quotation shows prices. */
    public enum Lines {
        /** Each item with its price. */
        ITEMS,
        /** One sum for all of them. */
        LUMP_SUM
    }

    /** Sorts the discounts and checks that none begins where another does. */
    public Sales {
        discounts = discounts.stream()
                .sorted(Comparator.comparingLong(Discount::from))
                .toList();
        Require.that(isOnce(discounts, Discount::from), "two discounts begin at the same sum");
        Require.that(validDays >= 1 && validDays <= 3650, "validDays %s must be 1 to 3650", validDays);
    }

    /** The discount on a sum of lines: that of the highest sum reached, none below the lowest. */
    public Rate discountOn(long sum) {
        return discounts.stream()
                .filter(d -> d.from <= sum)
                .reduce((a, b) -> b)
                .map(Discount::share)
                .orElse(Rate.NONE);
    }

    private static <T> boolean isOnce(List<T> all, Function<T, Object> key) {
        return all.stream().map(key).distinct().count() == all.size();
    }

    /**
     * A discount on the whole order.
     *
     * @param from least sum of the lines, minor units
     * @param share of that sum
     */
    public record Discount(long from, Rate share) {}
}
