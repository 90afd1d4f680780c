package org.runbend.optimizer.cutting;

import java.util.Locale;

/** The rules of this package's records, worded once. */
public final class Require {
    private Require() {}

    /** Throws IllegalArgumentException with the formatted message when the rule does not hold. */
    public static void that(boolean rule, String message, Object... values) {
        if (!rule) {
            throw new IllegalArgumentException(String.format(Locale.ROOT, message, values));
        }
    }
}
