package org.runbend.optimizer.cutting.patterns;

import java.util.Arrays;

/** What is left to do: cuts by size, and for each kind of stock the least and the greatest number still to be used. */
final class ResidualProblem {
    private final int[] counts;
    private final long[] least;
    private final long[] most;

    ResidualProblem(int[] counts, long[] least, long[] most) {
        this.counts = counts.clone();
        this.least = least.clone();
        this.most = most.clone();
    }

    /** All cuts of a problem; no kind is used more often than there are cuts. */
    static ResidualProblem of(MergedCuts cuts) {
        long[] most = cuts.kinds().stream()
                .mapToLong(k -> k.capacity() <= 0 ? 0 : Math.min(k.available(), cuts.totalCount()))
                .toArray();
        return new ResidualProblem(cuts.counts(), new long[most.length], most);
    }

    int[] counts() {
        return counts.clone();
    }

    int count(int size) {
        return counts[size];
    }

    long least(int kind) {
        return least[kind];
    }

    long most(int kind) {
        return most[kind];
    }

    long[] most() {
        return most.clone();
    }

    long total() {
        return Arrays.stream(counts).asLongStream().sum();
    }

    /** True when some kind cannot serve every cut by itself. */
    boolean hasLimits() {
        long total = total();
        return Arrays.stream(most).anyMatch(m -> m < total);
    }

    /** What is left after a plan for a part of it. */
    ResidualProblem without(PatternPlan part) {
        ResidualProblem rest = new ResidualProblem(counts, least, most);
        part.times().forEach((pattern, times) -> {
            pattern.takeFrom(rest.counts, times);
            rest.least[pattern.kind()] = Math.max(0, rest.least[pattern.kind()] - times);
            rest.most[pattern.kind()] -= times;
        });
        return rest;
    }

    /** The same where no kind need be used. */
    ResidualProblem withoutLeast() {
        return new ResidualProblem(counts, new long[least.length], most);
    }

    /** The same with other limits for one kind. */
    ResidualProblem withLimits(int kind, long newLeast, long newMost) {
        ResidualProblem other = new ResidualProblem(counts, least, most);
        other.least[kind] = newLeast;
        other.most[kind] = newMost;
        return other;
    }
}
