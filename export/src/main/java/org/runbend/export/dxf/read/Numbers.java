package org.runbend.export.dxf.read;

import java.nio.charset.StandardCharsets;

/** Decimal numbers of a file, read without the detour of a string where the result is exact. */
final class Numbers {
    private static final int LONGEST = 400;
    private static final double[] TENS = new double[23];

    static {
        TENS[0] = 1;
        for (int i = 1; i < TENS.length; i++) {
            TENS[i] = TENS[i - 1] * 10;
        }
    }

    private Numbers() {}

    /**
     * The number between the blanks, NaN if it is none. A mantissa under 2^53 times or by a power of ten up to 10^22 is
     * correctly rounded in one operation (Clinger 1990); all else is left to the library.
     */
    static double parse(byte[] data, int start, int end) {
        int from = start;
        int to = end;
        while (from < to && data[from] <= ' ' && data[from] >= 0) {
            from++;
        }
        while (to > from && data[to - 1] <= ' ' && data[to - 1] >= 0) {
            to--;
        }
        boolean signed = from < to && (data[from] == '-' || data[from] == '+');
        long mantissa = 0;
        int digits = 0;
        int decimals = 0;
        boolean point = false;
        for (int i = signed ? from + 1 : from; i < to; i++) {
            byte c = data[i];
            if (c >= '0' && c <= '9') {
                if (++digits > 15) {
                    return slow(data, from, to);
                }
                mantissa = 10 * mantissa + c - '0';
                decimals += point ? 1 : 0;
            } else if (c == '.' && !point) {
                point = true;
            } else {
                return slow(data, from, to);
            }
        }
        if (digits == 0) {
            return Double.NaN;
        }
        double value = mantissa / TENS[decimals];
        return signed && data[from] == '-' ? -value : value;
    }

    private static double slow(byte[] data, int from, int to) {
        if (to - from > LONGEST || !isDecimal(data, from, to)) {
            return Double.NaN;
        }
        try {
            return Double.parseDouble(new String(data, from, to - from, StandardCharsets.US_ASCII));
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** The library also knows hexadecimal numbers, type letters and words, which no drawing means. */
    private static boolean isDecimal(byte[] data, int from, int to) {
        for (int i = from; i < to; i++) {
            byte c = data[i];
            boolean fine = (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
            if (!fine) {
                return false;
            }
        }
        return true;
    }
}
