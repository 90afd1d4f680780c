package org.runbend.export.outline;

import java.util.List;

/** A drawing that no floor can be taken from. The message is one line: what was found, what would help. */
public final class NoOutline extends RuntimeException {
    private final transient List<Candidate> candidates;

    NoOutline(String message) {
        this(message, List.of());
    }

    /** Several closed lines could be the floor. */
    NoOutline(String message, List<Candidate> candidates) {
        super(message);
        this.candidates = List.copyOf(candidates);
    }

    /** The closed lines that a person may choose from, if that would help. */
    public List<Candidate> candidates() {
        return candidates;
    }
}
