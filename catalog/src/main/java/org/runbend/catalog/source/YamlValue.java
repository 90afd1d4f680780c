package org.runbend.catalog.source;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A value of a file and its place. A getter that finds the wrong thing notes a fault and returns a stand-in, so that
 * reading goes on and finds the next fault; {@link YamlMap#make} then makes nothing of it. A value that is missing
 * answers with stand-ins too, silently: its fault was noted already.
 */
public final class YamlValue {
    /** Longest text that is taken, characters. */
    public static final int LONGEST_TEXT = 500;

    private static final BigDecimal MOST_MONEY = new BigDecimal("100000000");

    private final Node node;
    private final String path;
    private final Reading reading;

    /** A value; without a node it is a missing one. */
    YamlValue(Node node, String path, Reading reading) {
        this.node = node;
        this.path = path;
        this.reading = reading;
    }

    /** Path of its key, such as floor.keepOut[2]. */
    public String path() {
        return path;
    }

    /** Whether it stands in the file. */
    public boolean isPresent() {
        return node != null;
    }

    /** Name of the file that it stands in; a file that extends another one holds values of both. */
    public String file() {
        return node == null
                ? reading.file()
                : node.getStartMark().map(Mark::getName).orElse(reading.file());
    }

    /** Whether it is a single value, neither list nor mapping. */
    public boolean isScalar() {
        return node instanceof ScalarNode;
    }

    /** Whether it is the text given. */
    public boolean isText(String text) {
        return node instanceof ScalarNode s && s.getValue().strip().equals(text);
    }

    /** Whether it is a list. */
    public boolean isList() {
        return node instanceof SequenceNode;
    }

    /** Whether it is a mapping. */
    public boolean isMap() {
        return node instanceof MappingNode;
    }

    /** Number of entries of a list; 0 if it is none. */
    public int size() {
        return node instanceof SequenceNode s ? s.getValue().size() : 0;
    }

    /** Notes a fault at the place of this value; nothing if it is missing. */
    public void fault(String message) {
        if (node != null) {
            reading.faults().add(faultAt(node, path, message));
        }
    }

    Fault faultAt(Node where, String keyPath, String message) {
        Mark mark = where.getStartMark().orElse(null);
        int line = mark == null ? 0 : mark.getLine() + 1;
        int column = mark == null ? 0 : mark.getColumn() + 1;
        return new Fault(mark == null ? reading.file() : mark.getName(), line, column, keyPath, message);
    }

    Fault faultHere(String keyPath, String message) {
        return faultAt(node, keyPath, message);
    }

    /** Notes that something else stands here than is wanted. */
    public void wrong(String wanted) {
        fault("found " + found() + ", " + wanted + " is wanted");
    }

    private String found() {
        if (node instanceof ScalarNode s) {
            return s.getValue().isBlank() ? "nothing" : Plain.quoted(s.getValue());
        }
        return node instanceof SequenceNode ? "a list" : "a mapping";
    }

    /** A text of one character or more, without blanks around it. */
    public String text() {
        return scalar("a text");
    }

    private String scalar(String wanted) {
        if (node == null) {
            return "";
        }
        String text = node instanceof ScalarNode s ? s.getValue().strip() : "";
        if (text.isEmpty()) {
            wrong(wanted);
        } else if (text.length() > LONGEST_TEXT) {
            fault("text of " + text.length() + " characters, at most " + LONGEST_TEXT + " are possible");
            return "";
        } else if (text.codePoints().anyMatch(c -> Character.getType(c) == Character.SURROGATE)) {
            fault("holds half of a character, a surrogate without its other half");
            return "";
        }
        return text;
    }

    /** A finite number between two bounds, both allowed. */
    public double number(double least, double most) {
        return within(scalarNumber("a number"), least, most, "a number", "");
    }

    private OptionalDouble scalarNumber(String wanted) {
        String text = scalar(wanted);
        OptionalDouble value = LengthText.number(text);
        if (value.isEmpty() && !text.isEmpty()) {
            wrong(wanted + pointHint(text));
        }
        return value;
    }

    /** A whole number between two bounds, both allowed. */
    public int whole(int least, int most) {
        String wanted = "a whole number";
        double value = within(scalarNumber(wanted), least, most, wanted, "");
        if (value != Math.rint(value) && !Double.isNaN(value)) {
            wrong(wanted);
        }
        return (int) value;
    }

    /** A length between two bounds in mm, both allowed; a number without unit is in the file's unit. */
    public double length(double least, double most) {
        String wanted = "a length in " + reading.unit().plural();
        String text = scalar(wanted);
        OptionalDouble value = LengthText.parse(text, reading.unit());
        if (value.isEmpty() && !text.isEmpty()) {
            wrong(wanted + pointHint(text));
        }
        return within(value, least, most, "a length", " mm");
    }

    /** A share between two bounds, 1 being the whole; it must be written with %. */
    public double share(double least, double most) {
        String text = scalar("a share with %, such as 85%,");
        if (text.isEmpty()) {
            return Double.NaN;
        }
        OptionalDouble value = OptionalDouble.empty();
        if (text.endsWith("%")) {
            value = LengthText.number(text.substring(0, text.length() - 1).strip());
        }
        if (value.isEmpty()) {
            wrong("a share with %, such as " + likelyShare(text) + ",");
            return Double.NaN;
        }
        return within(value, least * 100, most * 100, "a share", "%") / 100;
    }

    /** Who writes 0.85 means 85%, who writes 85 means 85% too. */
    private static String likelyShare(String text) {
        OptionalDouble number = LengthText.number(text);
        if (number.isEmpty()) {
            return "85%";
        }
        double v = number.getAsDouble();
        return Plain.number(v > 0 && v <= 1 ? v * 100 : v) + "%";
    }

    private double within(OptionalDouble value, double least, double most, String what, String unit) {
        if (value.isEmpty()) {
            return Double.NaN;
        }
        double v = value.getAsDouble();
        if (v < least || v > most) {
            wrong(what + " from " + Plain.number(least) + " to " + Plain.number(most) + unit);
            return Double.NaN;
        }
        return v;
    }

    private static String pointHint(String text) {
        return text.matches(".*\\d,\\d.*") ? " with a decimal point, not a comma," : "";
    }

    /**
     * An amount of money in minor units.
     *
     * @param digits decimals that the currency has
     */
    public long money(int digits) {
        String text = scalar("an amount of money");
        if (!text.matches("\\d{1,9}(\\.\\d{1,4})?")) {
            if (!text.isEmpty()) {
                wrong("an amount such as 12.50 that is not negative" + pointHint(text));
            }
            return 0;
        }
        BigDecimal amount = new BigDecimal(text).movePointRight(digits);
        if (amount.stripTrailingZeros().scale() > 0 || amount.compareTo(MOST_MONEY) > 0) {
            String most = MOST_MONEY.movePointLeft(digits).toBigInteger().toString();
            wrong("an amount of at most " + digits + " decimals and not over " + most);
            return 0;
        }
        return amount.longValueExact();
    }

    /** One of the constants of an enum, written in small letters with dashes. */
    public <E extends Enum<E>> E oneOf(Class<E> type) {
        List<E> all = Arrays.asList(type.getEnumConstants());
        List<String> words = all.stream().map(YamlValue::word).toList();
        String text = scalar("one of " + String.join(", ", words));
        int index = words.indexOf(text);
        if (index < 0 && !text.isEmpty()) {
            wrong("one of " + String.join(", ", words));
        }
        return all.get(Math.max(index, 0));
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The parts of a list of so many at most. */
    public List<YamlValue> list(int least, int most, String wanted) {
        if (node == null) {
            return List.of();
        }
        if (!(node instanceof SequenceNode s)) {
            wrong(wanted);
            return List.of();
        }
        List<YamlValue> parts = new ArrayList<>();
        for (Node part : s.getValue()) {
            parts.add(new YamlValue(part, path + "[" + parts.size() + "]", reading));
        }
        if (parts.size() < least || parts.size() > most) {
            fault("has " + parts.size() + (parts.size() == 1 ? " entry, " : " entries, ") + wanted + " is wanted");
            return List.of();
        }
        return List.copyOf(parts);
    }

    /** The mapping that stands here; an empty one that makes nothing if something else does. */
    public YamlMap map() {
        if (node instanceof MappingNode m) {
            return new YamlMap(this, m, reading);
        }
        if (node != null) {
            wrong(path.isEmpty() ? "a mapping of keys and values" : "a mapping");
        }
        return new YamlMap(this, null, reading);
    }

    /** Makes a record; what the record refuses is noted at this place. */
    public <T> Optional<T> make(Supplier<T> maker) {
        try {
            return Optional.of(maker.get());
        } catch (IllegalArgumentException e) {
            fault(e.getMessage());
            return Optional.empty();
        }
    }

    YamlValue in(Unit unit) {
        return new YamlValue(node, path, new Reading(reading.file(), reading.faults(), unit));
    }
}
