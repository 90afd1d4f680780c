package org.runbend.optimizer.cutting.patterns;

import java.util.Arrays;

/** What one stock piece of a kind gives: how many cuts of which sizes; sizes by rising index, each amount above 0. */
final class Pattern {
    private final int kind;
    private final int[] sizes;
    private final int[] amounts;

    Pattern(int kind, int[] sizes, int[] amounts) {
        this.kind = kind;
        this.sizes = sizes;
        this.amounts = amounts;
    }

    /** The pattern with the amounts given for all sizes. */
    static Pattern of(int kind, int[] all) {
        int parts = 0;
        for (int amount : all) {
            parts += amount > 0 ? 1 : 0;
        }
        int[] sizes = new int[parts];
        int[] amounts = new int[parts];
        int at = 0;
        for (int i = 0; i < all.length; i++) {
            if (all[i] > 0) {
                sizes[at] = i;
                amounts[at++] = all[i];
            }
        }
        return new Pattern(kind, sizes, amounts);
    }

    int kind() {
        return kind;
    }

    /** How many different sizes there are. */
    int parts() {
        return sizes.length;
    }

    int size(int part) {
        return sizes[part];
    }

    int amount(int part) {
        return amounts[part];
    }

    boolean isEmpty() {
        return sizes.length == 0;
    }

    /** The same cuts from another kind of stock. */
    Pattern from(int otherKind) {
        return new Pattern(otherKind, sizes, amounts);
    }

    /** How often the pattern can be cut without more cuts than counted. */
    int timesWithin(int[] counts) {
        int times = Integer.MAX_VALUE;
        for (int p = 0; p < sizes.length; p++) {
            times = Math.min(times, counts[sizes[p]] / amounts[p]);
        }
        return times;
    }

    /** Takes the cuts of so many times the pattern off the counts. */
    void takeFrom(int[] counts, int times) {
        for (int p = 0; p < sizes.length; p++) {
            counts[sizes[p]] -= amounts[p] * times;
        }
    }

    /** The pattern without the cuts that the counts do not ask for. */
    Pattern within(int[] counts) {
        if (timesWithin(counts) > 0) {
            return this;
        }
        int[] all = new int[counts.length];
        for (int p = 0; p < sizes.length; p++) {
            all[sizes[p]] = Math.min(amounts[p], counts[sizes[p]]);
        }
        return of(kind, all);
    }

    /** Sum of amounts times what each size is worth. */
    double worth(double[] each) {
        double worth = 0;
        for (int p = 0; p < sizes.length; p++) {
            worth += amounts[p] * each[sizes[p]];
        }
        return worth;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pattern p
                && kind == p.kind
                && Arrays.equals(sizes, p.sizes)
                && Arrays.equals(amounts, p.amounts);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Arrays.hashCode(sizes) + Arrays.hashCode(amounts)) + kind;
    }
}
