package org.runbend.catalog.product;

import java.math.BigDecimal;
import java.util.Currency;

/**
 * An amount of money. Sums and products stay whole minor units; only its words have a decimal point.
 *
 * @param minor minor units of the currency (cents of EUR, yen of JPY, fils of KWD)
 * @param currency its three letters (ISO 4217)
 */
public record Money(long minor, String currency) {
    private static final int USUAL_DECIMALS = 2;

    /** Decimals that people write amounts of a currency with (ISO 4217's exponent; 2 where the Java library knows none). */
    public static int decimals(String currency) {
        return Currency.getAvailableCurrencies().stream()
                .filter(c -> c.getCurrencyCode().equals(currency))
                .mapToInt(c -> Math.max(0, c.getDefaultFractionDigits()))
                .findFirst()
                .orElse(USUAL_DECIMALS);
    }

    /** The amount in major units, such as 12.50, -0.05 or, in yen, 1250. */
    public BigDecimal major() {
        return BigDecimal.valueOf(minor, decimals(currency));
    }

    /** The number alone, with as many decimals as the currency has. */
    public String bare() {
        return major().toPlainString();
    }

    /** Number and currency, such as 12.50 EUR. */
    @Override
    public String toString() {
        return bare() + " " + currency;
    }
}
