package org.runbend.catalog.source;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Writes values of a {@link YamlTree} as YAML that reads back alike. */
final class YamlWords {
    /** Longest value that stands on a line of its own beside its key; a list of mappings never does. */
    private static final int LINE = 110;

    /** The same for a mapping that holds others. */
    private static final int SHORT_LINE = 80;

    private static final int STEP = 2;
    private static final Pattern PLAIN =
            Pattern.compile("[\\p{L}\\p{Nd}+.-][\\p{L}\\p{Nd} _./%+()-]*[\\p{L}\\p{Nd}_./%+)]|[\\p{L}\\p{Nd}]");
    private static final Pattern ODD =
            Pattern.compile("[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}\\x{FEFF}\\x{FFFE}\\x{FFFF}\\x85]");

    private YamlWords() {}

    /** The value in one line, as it may stand in brackets. */
    static String flow(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(e -> scalar(String.valueOf(e.getKey())) + ": " + flow(e.getValue()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(YamlWords::flow).collect(Collectors.joining(", ", "[", "]"));
        }
        return scalar(String.valueOf(value));
    }

    /**
     * What stands behind a key and its colon: a blank and the value, or lines of their own.
     *
     * @param indent of the key
     * @param newline how lines of the file end
     */
    static String behind(Object value, int indent, String newline) {
        String line = flow(value);
        if (value instanceof List<?> list && !list.isEmpty() && (holdsMaps(list) || line.length() > LINE)) {
            String dash = newline + " ".repeat(indent + STEP) + "- ";
            return list.stream().map(v -> dash + flow(v)).collect(Collectors.joining());
        }
        if (value instanceof Map<?, ?> map
                && !map.isEmpty()
                && (line.length() > (isNested(map) ? SHORT_LINE : LINE)
                        || map.values().stream().anyMatch(v -> v instanceof List<?> l && holdsMaps(l)))) {
            return map.entrySet().stream()
                    .map(e -> newline + " ".repeat(indent + STEP) + entry(e, indent + STEP, newline))
                    .collect(Collectors.joining());
        }
        return " " + line;
    }

    /** A whole file. */
    static String file(Map<String, Object> root) {
        return root.entrySet().stream().map(e -> entry(e, 0, "\n") + "\n").collect(Collectors.joining());
    }

    /** A key with its value. */
    static String entry(Map.Entry<?, ?> entry, int indent, String newline) {
        return scalar(String.valueOf(entry.getKey())) + ":" + behind(entry.getValue(), indent, newline);
    }

    private static boolean isNested(Map<?, ?> map) {
        return map.values().stream().anyMatch(v -> v instanceof Map<?, ?> || v instanceof List<?>);
    }

    private static boolean holdsMaps(List<?> list) {
        return list.stream().anyMatch(v -> v instanceof Map<?, ?>);
    }

    private static String scalar(String text) {
        if (PLAIN.matcher(text).matches()
                && !text.startsWith("---")
                && !text.startsWith("- ")
                && !text.startsWith("...")
                && !text.equals("-")) {
            return text;
        }
        return ODD.matcher(text).find() ? doubleQuoted(text) : "'" + text.replace("'", "''") + "'";
    }

    private static String doubleQuoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (ODD.matcher(String.valueOf(c)).matches() && !Character.isSurrogate(c)) {
                out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
            } else {
                out.append(c);
            }
        }
        return out.append('"').toString();
    }
}
