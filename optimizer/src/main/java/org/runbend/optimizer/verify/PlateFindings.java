package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the plates' verifier found, one sentence each, in the order of finding. */
final class PlateFindings {
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
