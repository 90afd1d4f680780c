package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Puts a few odd or absurd things into a sound tree: values, keys, what is missing, what stands there too much. */
final class TreeSpoiler {
    private final Dice dice;
    private int target;

    TreeSpoiler(Dice dice) {
        this.dice = dice;
    }

    /** The tree with so many places spoiled. */
    Map<String, Object> spoiled(Map<String, Object> tree, int places) {
        Object spoiled = tree;
        for (int i = 0; i < places; i++) {
            target = dice.whole(0, count(spoiled) - 1);
            spoiled = walk(spoiled);
        }
        Map<String, Object> whole = new LinkedHashMap<>();
        ((Map<?, ?>) spoiled).forEach((k, v) -> whole.put((String) k, v));
        return whole;
    }

    private static int count(Object node) {
        if (node instanceof Map<?, ?> m) {
            return m.values().stream().mapToInt(v -> 1 + count(v)).sum();
        }
        return node instanceof List<?> l
                ? l.stream().mapToInt(v -> 1 + count(v)).sum()
                : 0;
    }

    private Object walk(Object node) {
        if (node instanceof Map<?, ?> m) {
            Map<Object, Object> copy = new LinkedHashMap<>();
            m.forEach((k, v) -> {
                if (target-- == 0) {
                    entry(copy, (String) k, v);
                } else {
                    copy.put(k, walk(v));
                }
            });
            return copy;
        }
        if (node instanceof List<?> l) {
            List<Object> copy = new ArrayList<>();
            for (Object v : l) {
                if (target-- == 0) {
                    item(copy, v);
                } else {
                    copy.add(walk(v));
                }
            }
            return copy;
        }
        return node;
    }

    private void entry(Map<Object, Object> copy, String key, Object value) {
        switch (dice.whole(0, 9)) {
            case 0 -> copy.put(misspelt(key), value);
            case 1 -> copy.put(dice.of(List.of("edge", "spacing", "loop", "veto", "\"\"", "1", "null", "[a]")), value);
            case 2 -> {
                // It is left out.
            }
            case 3 -> copy.put(key, List.of(value, value));
            case 4 -> copy.put(key, JobMaker.map(key, value));
            default -> copy.put(key, odd(value));
        }
    }

    private void item(List<Object> copy, Object value) {
        switch (dice.whole(0, 5)) {
            case 0 -> {
                // It is left out.
            }
            case 1 -> copy.addAll(List.of(value, value));
            case 2 -> copy.addAll(Collections.nCopies(dice.of(List.of(2, 30, 600)), value));
            default -> copy.add(odd(value));
        }
    }

    private Object odd(Object value) {
        if (value instanceof String text && text.matches("-?[0-9]+([.][0-9]+)?") && dice.percent(50)) {
            double number = Double.parseDouble(text) * dice.of(List.of(10.0, 0.1, 25.4, 1 / 25.4, -1.0, 2.0, 1.01));
            return Double.toString(number);
        }
        return OddTexts.value(dice);
    }

    private String misspelt(String key) {
        int at = dice.whole(0, key.length() - 1);
        return switch (dice.whole(0, 2)) {
            case 0 -> key.substring(0, at) + key.substring(at + 1) + "x";
            case 1 -> key.substring(0, at) + "e" + key.substring(at);
            default -> key.toUpperCase(Locale.ROOT);
        };
    }
}
