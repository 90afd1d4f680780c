package org.runbend.catalog.source;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** How messages write what they name. */
public final class Plain {
    private static final int MOST = 40;

    private Plain() {}

    /** A number without exponent and without zeros at its end, at most three decimals. */
    public static String number(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** A text in quotation marks on one line, shortened if it is long. */
    public static String quoted(String text) {
        String line = text.strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
        int points = line.codePointCount(0, line.length());
        return "'" + (points <= MOST ? line : line.substring(0, line.offsetByCodePoints(0, MOST)) + "...") + "'";
    }
}
