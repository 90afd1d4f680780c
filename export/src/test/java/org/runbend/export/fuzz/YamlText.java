package org.runbend.export.fuzz;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes a tree of mappings, lists and texts as YAML, in block or in flow style as chance has it. */
final class YamlText {
    private final Dice dice;

    YamlText(Dice dice) {
        this.dice = dice;
    }

    String of(Map<?, ?> tree) {
        StringBuilder text = new StringBuilder();
        block(text, tree, 0);
        return text.toString();
    }

    private void block(StringBuilder text, Map<?, ?> map, int indent) {
        for (Map.Entry<?, ?> e : map.entrySet()) {
            text.append(" ".repeat(indent)).append(e.getKey()).append(':');
            value(text, e.getValue(), indent);
        }
    }

    private void value(StringBuilder text, Object value, int indent) {
        boolean spread = indent < 8 && dice.percent(indent == 0 ? 50 : 15);
        if (spread && value instanceof Map<?, ?> m && !m.isEmpty()) {
            text.append('\n');
            block(text, m, indent + 2);
        } else if (spread && value instanceof List<?> l && !l.isEmpty()) {
            text.append('\n');
            l.forEach(v -> text.append(" ".repeat(indent + 2))
                    .append("- ")
                    .append(flow(v))
                    .append('\n'));
        } else {
            text.append(' ')
                    .append(flow(value))
                    .append(dice.percent(2) ? "   # as told" : "")
                    .append('\n');
        }
    }

    private static String flow(Object value) {
        if (value instanceof Map<?, ?> m) {
            return m.entrySet().stream()
                    .map(e -> e.getKey() + ": " + flow(e.getValue()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (value instanceof List<?> l) {
            return l.stream().map(YamlText::flow).collect(Collectors.joining(", ", "[", "]"));
        }
        return String.valueOf(value);
    }
}
