package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the verifier of a plan found, one sentence each, in the order of finding. */
final class KitFindings {
    private final List<String> sentences = new ArrayList<>();

    /** Notes a formatted sentence unless the rule holds. */
    void unless(boolean rule, String format, Object... values) {
        if (!rule) {
            sentences.add(String.format(Locale.ROOT, format, values));
        }
    }

    /** Notes what another verifier found. */
    void addAll(List<String> others) {
        sentences.addAll(others);
    }

    List<String> sentences() {
        return List.copyOf(sentences);
    }
}
