package org.runbend.catalog.shelf;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/**
 * An opened coil or an offcut on the shelf.
 *
 * @param id what is written on it
 * @param product part number of the pipe or plate it is from
 * @param length mm, as measured
 */
public record Remnant(String id, String product, double length) {
    private static final Pattern UNOPENED = Pattern.compile("whole [0-9.]+ m( \\([0-9]+\\))?");

    /** Checks that the length can be told with a tape. */
    public Remnant {
        if (!(length >= 1)) {
            throw new IllegalArgumentException("remnant " + id + ": length must be at least 1 mm");
        }
    }

    /** An unopened coil in a length that is no longer sold, which is cut like an opened one; the n-th of its length, from 1. */
    public static Remnant unopened(String product, double length, int n) {
        String metres =
                BigDecimal.valueOf(length).movePointLeft(3).stripTrailingZeros().toPlainString();
        return new Remnant("whole " + metres + " m" + (n > 1 ? " (" + n + ")" : ""), product, length);
    }

    /** Whether an id is that of an unopened coil, so that nothing is written on it. */
    public static boolean isUnopened(String id) {
        return UNOPENED.matcher(id).matches();
    }
}
