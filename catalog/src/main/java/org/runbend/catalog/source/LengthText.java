package org.runbend.catalog.source;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths as people write them: 1650, 1650 mm, 165 cm, 1.65m, 63.5in, 2 1/2 in, 5ft 3 3/8in. Computed in decimal and
 * rounded to a millionth of a millimetre, so that an inch and its metric twin are the same number.
 */
public final class LengthText {
    private static final String DECIMAL = "(?:\\d{1,12}(?:\\.\\d{0,12})?|\\.\\d{1,12})";
    private static final Pattern BARE = Pattern.compile("[+-]?" + DECIMAL + "(?:[eE][+-]?\\d{1,2})?");
    private static final Pattern METRIC = Pattern.compile("([+-]?" + DECIMAL + ") ?(mm|cm|m)");
    private static final Pattern FEET = Pattern.compile("(\\d{1,4}(?:\\.\\d{1,6})?) ?(?:ft|')");
    private static final Pattern INCHES =
            Pattern.compile("(" + DECIMAL + ")?(?:(?:(?<=\\d) )?(\\d{1,3})/(\\d{1,3}))? ?(?:in|\")");
    private static final BigDecimal INCH = new BigDecimal("25.4");
    private static final BigDecimal TWELVE = new BigDecimal("12");

    private LengthText() {}

    /**
     * The length in mm, or empty if the text is none.
     *
     * @param written the text
     * @param unit the unit of a number without one
     */
    public static OptionalDouble parse(String written, Unit unit) {
        String text = written.strip().replaceAll("\\s+", " ");
        if (BARE.matcher(text).matches()) {
            BigDecimal value = new BigDecimal(text);
            return OptionalDouble.of(rounded(unit == Unit.IN ? value.multiply(INCH) : value));
        }
        Matcher metric = METRIC.matcher(text);
        if (metric.matches()) {
            return OptionalDouble.of(rounded(new BigDecimal(metric.group(1)).multiply(millimetres(metric.group(2)))));
        }
        return imperial(unit == Unit.IN && text.matches("[+-]?[0-9 ]*[0-9]/[0-9]+") ? text + "in" : text);
    }

    /** A number without unit, or empty if the text is none; hexadecimal, infinite and special numbers are none. */
    public static OptionalDouble number(String text) {
        return BARE.matcher(text).matches()
                ? OptionalDouble.of(new BigDecimal(text).doubleValue())
                : OptionalDouble.empty();
    }

    private static OptionalDouble imperial(String text) {
        boolean negative = text.startsWith("-");
        String rest = negative || text.startsWith("+") ? text.substring(1) : text;
        BigDecimal inches = BigDecimal.ZERO;
        Matcher feet = FEET.matcher(rest);
        boolean hasFeet = feet.lookingAt();
        if (hasFeet) {
            inches = new BigDecimal(feet.group(1)).multiply(TWELVE);
            rest = rest.substring(feet.end()).strip();
        }
        if (!hasFeet || !rest.isEmpty()) {
            BigDecimal more = inches(rest);
            if (more == null || (hasFeet && more.compareTo(TWELVE) >= 0)) {
                return OptionalDouble.empty();
            }
            inches = inches.add(more);
        }
        double mm = rounded(inches.multiply(INCH));
        return OptionalDouble.of(negative ? -mm : mm);
    }

    /** Inches with a decimal or a common fraction; null if the text is neither. */
    private static BigDecimal inches(String text) {
        Matcher m = INCHES.matcher(text);
        if (!m.matches() || (m.group(1) == null && m.group(2) == null)) {
            return null;
        }
        BigDecimal whole = m.group(1) == null ? BigDecimal.ZERO : new BigDecimal(m.group(1));
        if (m.group(2) == null) {
            return whole;
        }
        int over = Integer.parseInt(m.group(2));
        int under = Integer.parseInt(m.group(3));
        if (under == 0 || (m.group(1) != null && (over >= under || m.group(1).contains(".")))) {
            return null;
        }
        return whole.add(new BigDecimal(over).divide(new BigDecimal(under), 12, RoundingMode.HALF_EVEN));
    }

    private static BigDecimal millimetres(String unit) {
        return switch (unit) {
            case "mm" -> BigDecimal.ONE;
            case "cm" -> BigDecimal.TEN;
            default -> new BigDecimal("1000");
        };
    }

    private static double rounded(BigDecimal mm) {
        return mm.setScale(6, RoundingMode.HALF_EVEN).doubleValue() + 0.0;
    }
}
