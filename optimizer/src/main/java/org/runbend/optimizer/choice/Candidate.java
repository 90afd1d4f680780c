package org.runbend.optimizer.choice;

import java.util.List;
import java.util.stream.Collectors;
import org.runbend.optimizer.job.Job;

/**
 * A job that is worth planning beside the one given.
 *
 * @param changes what differs from the job given; empty for that job itself
 * @param job the job with these changes
 */
record Candidate(List<KeyChange> changes, Job job) {
    /** Copies the list. */
    Candidate {
        changes = List.copyOf(changes);
    }

    boolean isAsked() {
        return changes.isEmpty();
    }

    String words() {
        return words(changes);
    }

    static String words(List<KeyChange> changes) {
        return changes.isEmpty()
                ? "the job as it is"
                : changes.stream().map(KeyChange::words).collect(Collectors.joining(", "));
    }
}
