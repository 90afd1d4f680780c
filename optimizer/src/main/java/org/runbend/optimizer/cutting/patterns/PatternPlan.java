package org.runbend.optimizer.cutting.patterns;

import java.util.LinkedHashMap;
import java.util.Map;

/** Patterns and how often each is cut, in the order in which they were thought of. */
final class PatternPlan {
    private final MergedCuts cuts;
    private final Map<Pattern, Integer> times = new LinkedHashMap<>();
    private long cost;
    private long scrap;

    PatternPlan(MergedCuts cuts) {
        this.cuts = cuts;
    }

    /** A copy that can grow on its own. */
    PatternPlan copy() {
        PatternPlan copy = new PatternPlan(cuts);
        times.forEach(copy::add);
        return copy;
    }

    void add(Pattern pattern, int count) {
        if (count > 0 && !pattern.isEmpty()) {
            times.merge(pattern, count, Integer::sum);
            cost += count * cuts.kinds().get(pattern.kind()).cost();
            scrap += count * cuts.scrap(pattern);
        }
    }

    void addAll(PatternPlan other) {
        other.times.forEach(this::add);
    }

    Map<Pattern, Integer> times() {
        return times;
    }

    long cost() {
        return cost;
    }

    long scrap() {
        return scrap;
    }

    /** How many stock pieces of a kind are used. */
    long used(int kind) {
        return times.entrySet().stream()
                .filter(e -> e.getKey().kind() == kind)
                .mapToLong(Map.Entry::getValue)
                .sum();
    }

    /** How many stock pieces are new, none from a shelf. */
    long opened() {
        return times.entrySet().stream()
                .filter(e -> cuts.kinds().get(e.getKey().kind()).isNew())
                .mapToLong(Map.Entry::getValue)
                .sum();
    }

    /** Cheaper; at that cost less scrap; at that fewer new stock pieces; at that fewer patterns. */
    boolean isBetterThan(PatternPlan other) {
        if (cost != other.cost) {
            return cost < other.cost;
        }
        if (scrap != other.scrap) {
            return scrap < other.scrap;
        }
        long fewer = other.opened() - opened();
        return fewer != 0 ? fewer > 0 : times.size() < other.times.size();
    }
}
