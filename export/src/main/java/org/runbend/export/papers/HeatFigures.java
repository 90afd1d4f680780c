package org.runbend.export.papers;

import java.util.Locale;

/** How figures of heat are printed: with as many digits as they are worth. */
final class HeatFigures {
    private HeatFigures() {}

    /** Three figures. */
    static String three(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return "0";
        }
        double power = Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 2);
        double rounded = Math.rint(value / power) * power;
        return power >= 1
                ? String.format(Locale.ROOT, "%.0f", rounded)
                : String.format(
                        Locale.ROOT,
                        "%." + (int) Math.max(0, Math.min(6, Math.rint(-Math.log10(power)))) + "f",
                        rounded);
    }

    /** One decimal, from 100 on three figures. */
    static String figure(double value) {
        return Math.abs(value) >= 100 ? three(value) : one(value);
    }

    /** One decimal. */
    static String one(double value) {
        return unsigned(String.format(Locale.ROOT, "%.1f", value));
    }

    /** Two decimals. */
    static String two(double value) {
        return unsigned(String.format(Locale.ROOT, "%.2f", value));
    }

    /** No decimals. */
    static String whole(double value) {
        return unsigned(String.format(Locale.ROOT, "%.0f", value));
    }

    /** Three decimals. */
    static String thousandths(double value) {
        return unsigned(String.format(Locale.ROOT, "%.3f", value));
    }

    private static String unsigned(String text) {
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }
}
