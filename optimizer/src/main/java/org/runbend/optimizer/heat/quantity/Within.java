package org.runbend.optimizer.heat.quantity;

import java.util.Locale;

/** Holds a quantity against its range. What is no number is never within. */
public final class Within {
    private Within() {}

    /**
     * The value itself.
     *
     * @param name what it is, as a person calls it
     * @param unit may be empty
     * @throws OddInput where the value is no number, under the least or over the most
     */
    public static double range(String name, double value, double least, double most, String unit) {
        if (!(value >= least && value <= most)) {
            throw new OddInput(String.format(
                    Locale.ROOT,
                    "%s %s%s: must be %s to %s%s",
                    name,
                    plain(value),
                    of(unit),
                    plain(least),
                    plain(most),
                    of(unit)));
        }
        return value;
    }

    /**
     * Fails with one line unless the rule holds.
     *
     * @param text a format of {@link String#format}
     * @throws OddInput where the rule does not hold
     */
    public static void rule(boolean rule, String text, Object... values) {
        if (!rule) {
            throw new OddInput(String.format(Locale.ROOT, text, values));
        }
    }

    private static String of(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.6g", value);
    }
}
