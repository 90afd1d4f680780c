package org.runbend.catalog.product;

import java.util.Locale;

/** The one way in which a record says that a value cannot exist. */
final class Require {
    private Require() {}

    /**
     * Throws {@link IllegalArgumentException} with the formatted text unless the rule holds.
     *
     * @param rule what must be true
     * @param text a format of {@link String#format}
     * @param values the values that the text names
     */
    static void that(boolean rule, String text, Object... values) {
        if (!rule) {
            throw new IllegalArgumentException(String.format(Locale.ROOT, text, values));
        }
    }
}
