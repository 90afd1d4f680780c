package org.runbend.optimizer.cutting;

import java.util.List;
import java.util.Optional;

/** What column generation came to: fractions of patterns, and a bound that is proved whatever the fractions are. */
final class Relaxation {
    private final List<Pattern> patterns;
    private final double[] times;
    private final double value;
    private final long bound;
    private final double[] prices;

    /**
     * {@code times} are the patterns' (floating point), {@code value} their cost, {@code bound} a proved cost, {@code
     * prices} those of the cuts in cost units that proved it.
     */
    Relaxation(List<Pattern> patterns, double[] times, double value, long bound, double[] prices) {
        this.patterns = patterns;
        this.times = times;
        this.value = value;
        this.bound = bound;
        this.prices = prices;
    }

    List<Pattern> patterns() {
        return patterns;
    }

    double times(int pattern) {
        return times[pattern];
    }

    /** False when the program gave up before it had fractions. */
    boolean hasTimes() {
        return times.length == patterns.size() && times.length > 0;
    }

    double value() {
        return value;
    }

    long bound() {
        return bound;
    }

    /** Empty where no prices were found. */
    Optional<double[]> prices() {
        return Optional.ofNullable(prices);
    }

    /** Fractional number of stock pieces of a kind. */
    double used(int kind) {
        double used = 0;
        for (int p = 0; p < patterns.size(); p++) {
            used += patterns.get(p).kind() == kind ? times[p] : 0;
        }
        return used;
    }
}
