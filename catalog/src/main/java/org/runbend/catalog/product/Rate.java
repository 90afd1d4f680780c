package org.runbend.catalog.product;

import java.math.BigDecimal;

/**
 * A share of an amount, such as a rate of tax or a discount, in whole hundredths of a percent.
 *
 * @param hundredths of a percent, 0 to 10,000
 */
public record Rate(int hundredths) {
    /** Nothing of it. */
    public static final Rate NONE = new Rate(0);

    private static final int WHOLE = 10_000;
    private static final double SAME = 1e-6;

    /** Checks the range. */
    public Rate {
        Require.that(
                hundredths >= 0 && hundredths <= WHOLE, "share: %s hundredths of a percent: 0 to 10000", hundredths);
    }

    /** Whether a share has at most two decimals when it is written in percent. */
    public static boolean isExact(double share) {
        return Math.abs(share * WHOLE - Math.rint(share * WHOLE)) < SAME;
    }

    /** A share of 1, rounded to hundredths of a percent. */
    public static Rate ofShare(double share) {
        return new Rate((int) Math.rint(share * WHOLE));
    }

    /** That share of an amount in minor units, rounded half up once (a half goes to the larger number, as in BR-CO-17 of EN 16931). */
    public long of(long minor) {
        return Math.floorDiv(Math.addExact(Math.multiplyExact(minor, hundredths), WHOLE / 2), WHOLE);
    }

    /** In percent, such as 5.5 %. */
    @Override
    public String toString() {
        return BigDecimal.valueOf(hundredths, 2).stripTrailingZeros().toPlainString() + " %";
    }
}
