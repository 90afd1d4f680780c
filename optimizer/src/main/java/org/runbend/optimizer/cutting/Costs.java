package org.runbend.optimizer.cutting;

import java.util.Collection;
import java.util.List;

/** Which sums the costs of stock can make: a bound may be lifted to the next of them. */
public final class Costs {
    /** Cells of the table of costs: chosen for memory, not measured. */
    private static final int TABLE = 2_000_000;

    private Costs() {}

    /** Greatest common divisor of the costs above 0; 1 when all are 0. */
    static long grain(Collection<Stock> stock) {
        long grain = 0;
        for (Stock s : stock) {
            grain = gcd(s.cost(), grain);
        }
        return Math.max(1, grain);
    }

    /** Greatest common divisor of two numbers from 0 up. */
    public static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** The least sum of stock costs, each as often as available, that is at least {@code bound}. */
    public static long lift(List<Stock> stock, long bound) {
        long grain = grain(stock);
        long from = Math.max(0, -Math.floorDiv(-bound, grain));
        long dearest = stock.stream().mapToLong(Stock::cost).max().orElse(0) / grain;
        if (from + dearest > TABLE || dearest == 0) {
            return from * grain;
        }
        boolean[] makes = sums(stock, grain, (int) (from + dearest));
        for (int c = (int) from; c < makes.length; c++) {
            if (makes[c]) {
                return c * grain;
            }
        }
        return from * grain;
    }

    private static boolean[] sums(List<Stock> stock, long grain, int size) {
        boolean[] makes = new boolean[size + 1];
        makes[0] = true;
        for (Stock s : stock) {
            int cost = (int) (s.cost() / grain);
            if (cost == 0 || cost > size) {
                continue;
            }
            addOne(makes, cost, s.available());
        }
        return makes;
    }

    private static void addOne(boolean[] makes, int cost, int available) {
        int[] used = new int[makes.length];
        for (int c = cost; c < makes.length; c++) {
            if (!makes[c] && makes[c - cost] && used[c - cost] < available) {
                makes[c] = true;
                used[c] = used[c - cost] + 1;
            }
        }
    }
}
