package org.runbend.optimizer.choice;

import java.util.List;
import java.util.stream.Collectors;
import org.runbend.optimizer.job.Job;

/**
 * A job that is worth planning beside the one given.
 *
 * @param wishes what differs from the job given; empty for that job itself
 * @param job the job with these wishes
 */
record Candidate(List<Wish> wishes, Job job) {
    /** Copies the list. */
    Candidate {
        wishes = List.copyOf(wishes);
    }

    boolean isAsked() {
        return wishes.isEmpty();
    }

    String words() {
        return words(wishes);
    }

    static String words(List<Wish> wishes) {
        return wishes.isEmpty()
                ? "the job as it is"
                : wishes.stream().map(Wish::words).collect(Collectors.joining(", "));
    }
}
