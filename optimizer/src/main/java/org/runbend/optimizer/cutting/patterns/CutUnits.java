package org.runbend.optimizer.cutting.patterns;

import org.runbend.optimizer.cutting.Costs;

/** Sizes and capacities in the greatest unit that divides every size; a capacity is rounded down, which loses nothing. */
final class CutUnits {
    private final long unit;
    private final long[] sizes;
    private final long[] capacities;

    CutUnits(MergedCuts cuts) {
        long common = 0;
        for (int i = 0; i < cuts.sizeCount(); i++) {
            common = Costs.gcd(cuts.size(i), common);
        }
        unit = Math.max(1, common);
        sizes = new long[cuts.sizeCount()];
        for (int i = 0; i < sizes.length; i++) {
            sizes[i] = cuts.size(i) / unit;
        }
        capacities = cuts.kinds().stream()
                .mapToLong(k -> Math.max(0, k.capacity() / unit))
                .toArray();
    }

    int sizeCount() {
        return sizes.length;
    }

    long size(int i) {
        return sizes[i];
    }

    /** What a stock piece of a kind takes. */
    long capacity(int kind) {
        return capacities[kind];
    }

    long greatestCapacity() {
        long greatest = 0;
        for (long c : capacities) {
            greatest = Math.max(greatest, c);
        }
        return greatest;
    }
}
