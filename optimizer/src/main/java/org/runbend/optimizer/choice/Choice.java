package org.runbend.optimizer.choice;

import java.util.List;

/**
 * The good plans of a floor, and what else was looked at.
 *
 * @param alternatives numbered from 1, at most {@link #MOST}; none is dominated by another
 * @param others what was planned, or tried in vain, and is not among them
 */
public record Choice(List<Alternative> alternatives, List<Other> others) {
    /** More plans than this nobody compares on a page. */
    public static final int MOST = 6;

    /** Copies the lists. */
    public Choice {
        alternatives = List.copyOf(alternatives);
        others = List.copyOf(others);
    }

    /** Whether heat could be reckoned, so that the warmest plan is known. */
    public boolean hasHeat() {
        return alternatives.get(0).figures().watts().isPresent();
    }

    /**
     * What is not among the alternatives.
     *
     * @param changes what it wished otherwise than the job
     * @param reason why it is not among them, half a sentence
     */
    public record Other(List<KeyChange> changes, String reason) {
        /** Copies the list. */
        public Other {
            changes = List.copyOf(changes);
        }

        /** What it wished otherwise, as a person reads it. */
        public String wishWords() {
            return Candidate.words(changes);
        }
    }
}
