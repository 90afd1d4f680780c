package org.runbend.optimizer.cutting;

import java.util.List;

/** Which sums the costs of stock can make: a bound may be lifted to the next of them. */
public final class CostSums {
    /** Cells of the table of sums: chosen for memory (2 MB), not measured. */
    private static final long TABLE = 2_000_000;

    private final long grain;
    private final boolean[] makes;

    /** Sums up to {@code most}, each kind of stock as often as it is available. */
    public CostSums(List<Stock> stock, long most) {
        grain = Costs.grain(stock);
        long size = most / grain + 1;
        makes = new boolean[size <= TABLE ? (int) size : 0];
        if (makes.length > 0) {
            makes[0] = true;
        }
        for (Stock s : stock) {
            if (s.cost() > 0 && s.available() > 0 && s.cost() / grain < makes.length) {
                add((int) (s.cost() / grain), s.available());
            }
        }
    }

    private void add(int cost, int available) {
        int[] used = new int[makes.length];
        for (int c = cost; c < makes.length; c++) {
            if (!makes[c] && makes[c - cost] && used[c - cost] < available) {
                makes[c] = true;
                used[c] = used[c - cost] + 1;
            }
        }
    }

    /** The least sum that is at least {@code bound}, as far as the table goes; above it the next multiple of all costs; the greatest long (no plan at all) stays. */
    public long lift(long bound) {
        if (bound <= 0) {
            return 0;
        }
        if (bound > Long.MAX_VALUE - grain) {
            return Long.MAX_VALUE;
        }
        long from = -Math.floorDiv(-bound, grain);
        for (long c = from; c < makes.length; c++) {
            if (makes[(int) c]) {
                return c * grain;
            }
        }
        return from * grain;
    }

    /** The greatest sum below {@code cost}, or less than 0 when there is none. */
    public long below(long cost) {
        long from = -Math.floorDiv(-cost, grain) - 1;
        if (from >= makes.length) {
            return from * grain;
        }
        for (int c = (int) from; c >= 0; c--) {
            if (makes[c]) {
                return c * grain;
            }
        }
        return -1;
    }
}
