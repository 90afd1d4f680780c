package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a verifier found, one sentence each, in the order of finding. Numbers print the same in every country. */
final class Findings {
    private final List<String> sentences = new ArrayList<>();

    /** Notes a formatted sentence unless the rule holds. */
    void unless(boolean rule, String format, Object... values) {
        if (!rule) {
            sentences.add(String.format(Locale.ROOT, format, values));
        }
    }

    List<String> sentences() {
        return List.copyOf(sentences);
    }
}
