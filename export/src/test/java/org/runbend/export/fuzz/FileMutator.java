package org.runbend.export.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Spoils a text file: by value, by line, by letter, by byte. */
final class FileMutator {
    private static final Pattern VALUE = Pattern.compile("(?<=: )[^,{}\\[\\]\n]+|(?<=[\\[ ])-?[0-9.]+(?=[,\\]])");
    private static final Pattern KEY = Pattern.compile("\\b[A-Za-z]{1,30}(?=:)");
    private static final List<String> LETTERS = List.of(
            ":",
            "-",
            "#",
            "'",
            "\"",
            "{",
            "}",
            "[",
            "]",
            ",",
            "&a ",
            "*a",
            "!",
            "!!str ",
            "|",
            ">",
            "%",
            "@",
            "`",
            "\t",
            "\n",
            "\r\n",
            "\r",
            "\u00a0",
            "\u2028",
            "\ufeff",
            "\u0000",
            "\u0007",
            "\ud83d\udee0",
            "\u0301",
            "---\n",
            "...\n",
            "? ",
            "<<: ",
            "  ");

    private final Dice dice;

    FileMutator(Dice dice) {
        this.dice = dice;
    }

    byte[] mutated(String text, int times) {
        String now = text;
        for (int i = 0; i < times; i++) {
            now = dice.percent(50) ? byValue(now) : dice.percent(60) ? byLine(now) : byLetter(now);
        }
        byte[] bytes = now.getBytes(StandardCharsets.UTF_8);
        return dice.percent(10) ? byByte(bytes) : bytes;
    }

    private String byValue(String text) {
        return switch (dice.whole(0, 3)) {
            case 0 -> replaced(text, KEY, "k" + dice.whole(0, 9));
            case 1 -> swapped(text);
            default -> replaced(text, VALUE, OddTexts.value(dice));
        };
    }

    private String replaced(String text, Pattern what, String by) {
        List<int[]> all = places(text, what);
        if (all.isEmpty()) {
            return text + by;
        }
        int[] at = dice.of(all);
        return text.substring(0, at[0]) + by + text.substring(at[1]);
    }

    private String swapped(String text) {
        List<int[]> all = places(text, VALUE);
        if (all.size() < 2) {
            return text;
        }
        int first = dice.whole(0, all.size() - 2);
        int[] a = all.get(first);
        int[] b = all.get(dice.whole(first + 1, all.size() - 1));
        return text.substring(0, a[0])
                + text.substring(b[0], b[1])
                + text.substring(a[1], b[0])
                + text.substring(a[0], a[1])
                + text.substring(b[1]);
    }

    private static List<int[]> places(String text, Pattern what) {
        List<int[]> all = new ArrayList<>();
        Matcher m = what.matcher(text);
        while (m.find()) {
            all.add(new int[] {m.start(), m.end()});
        }
        return all;
    }

    private String byLine(String text) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        if (lines.isEmpty()) {
            return text;
        }
        int at = dice.whole(0, lines.size() - 1);
        switch (dice.whole(0, 8)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(at));
            case 2 -> Collections.swap(lines, at, dice.whole(0, lines.size() - 1));
            case 3 -> lines.set(at, "  " + lines.get(at));
            case 4 -> lines.set(at, lines.get(at).strip());
            case 5 -> lines.set(at, "\t" + lines.get(at));
            case 6 -> lines.set(at, "# " + lines.get(at));
            case 7 -> lines.addAll(at, List.copyOf(lines));
            default -> lines.set(at, lines.get(at) + " " + OddTexts.value(dice));
        }
        return lines.stream().collect(Collectors.joining(dice.percent(10) ? "\r\n" : "\n", "", "\n"));
    }

    private String byLetter(String text) {
        int at = dice.whole(0, text.length());
        return switch (dice.whole(0, 3)) {
            case 0 -> text.substring(0, at);
            case 1 -> text.substring(at);
            case 2 -> text.substring(0, at) + text.substring(Math.min(text.length(), at + dice.whole(1, 20)));
            default -> text.substring(0, at) + dice.of(LETTERS) + text.substring(at);
        };
    }

    private byte[] byByte(byte[] bytes) {
        byte[] copy = Arrays.copyOf(bytes, bytes.length);
        int count = dice.whole(1, 4);
        for (int i = 0; i < count && copy.length > 0; i++) {
            copy[dice.whole(0, copy.length - 1)] = dice.bytes(1)[0];
        }
        if (dice.percent(20)) {
            ByteArrayOutputStream longer = new ByteArrayOutputStream();
            longer.writeBytes(copy);
            longer.writeBytes(dice.bytes(dice.whole(1, 300)));
            return longer.toByteArray();
        }
        return copy;
    }
}
