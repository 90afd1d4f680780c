package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What column generation came to: fractions of patterns, and a bound that is proved whatever the fractions are. */
final class Relaxation {
    /** Patterns worth so much of their cost are kept for the programs to come: chosen, not measured. */
    private static final double NEARLY = 0.97;

    private final List<Pattern> patterns;
    private final double[] times;
    private final long bound;
    private final double[] prices;

    /**
     * {@code times} are the patterns' (floating point), {@code bound} a proved cost, {@code
     * prices} those of the cuts in cost units that proved it.
     */
    Relaxation(List<Pattern> patterns, double[] times, long bound, double[] prices) {
        this.patterns = patterns;
        this.times = times;
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

    long bound() {
        return bound;
    }

    /** Empty where no prices were found. */
    Optional<double[]> prices() {
        return Optional.ofNullable(prices);
    }

    /** The patterns in use and those that nearly pay: enough to begin with after a small change. */
    List<Pattern> useful(MergedCuts cuts) {
        if (prices == null) {
            return patterns;
        }
        List<Pattern> useful = new ArrayList<>();
        for (int p = 0; p < patterns.size(); p++) {
            Pattern pattern = patterns.get(p);
            double cost = cuts.kinds().get(pattern.kind()).cost();
            if (times[p] > 0 || pattern.worth(prices) >= NEARLY * cost) {
                useful.add(pattern);
            }
        }
        return useful;
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
