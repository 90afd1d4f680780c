package org.runbend.export.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Plain decimal numbers for files: a point, no exponent, no negative zero, alike in every locale and on every JDK. */
public final class Decimals {
    private Decimals() {}

    /** The value rounded half-even to {@code digits} places, trailing zeros dropped ({@code 12.5}, {@code 7}, {@code 0}). */
    public static String of(double value, int digits) {
        // The exact binary value: Double.toString differs between JDK releases.
        BigDecimal rounded = new BigDecimal(value).setScale(digits, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
