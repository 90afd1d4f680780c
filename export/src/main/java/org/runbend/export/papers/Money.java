package org.runbend.export.papers;

import java.math.BigDecimal;
import java.util.Currency;

/** Amounts of one currency for people: minor units as major ones with a point. */
final class Money {
    private static final int USUAL_DIGITS = 2;

    private final String code;
    private final int digits;

    /** A currency by its three letters (ISO 4217); one the Java library does not know has two decimals. */
    Money(String code) {
        this.code = code;
        this.digits = Currency.getAvailableCurrencies().stream()
                .filter(c -> c.getCurrencyCode().equals(code))
                .mapToInt(c -> Math.max(0, c.getDefaultFractionDigits()))
                .findFirst()
                .orElse(USUAL_DIGITS);
    }

    String bare(long minor) {
        return BigDecimal.valueOf(minor, digits).toPlainString();
    }

    String full(long minor) {
        return bare(minor) + " " + code;
    }
}
