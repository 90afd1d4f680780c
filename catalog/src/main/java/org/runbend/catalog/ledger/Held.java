package org.runbend.catalog.ledger;

import java.util.Locale;

/** How lengths and amounts are told. */
public final class Held {
    private static final double HUNDREDTHS = 100;
    private static final long METRE = 100_000;

    private Held() {}

    /** A length as benches say it: metres from 10 m on, else mm. */
    public static String length(long hundredths) {
        if (Math.abs(hundredths) >= 10 * METRE) {
            return trimmed(String.format(Locale.ROOT, "%.3f", hundredths / (double) METRE)) + " m";
        }
        return trimmed(String.format(Locale.ROOT, "%.2f", hundredths / HUNDREDTHS)) + " mm";
    }

    /** An amount of some kind: a length of a piece, else a number. */
    public static String amount(Kind kind, long amount) {
        return kind.isPiece() ? length(amount) : Long.toString(amount);
    }

    private static String trimmed(String decimal) {
        return decimal.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
