package org.runbend.optimizer.loop;

/** Prices of left-out nodes as multiples of their greatest common divisor, so that a sum of them can be counted. */
final class PriceUnits {
    private final int[] units;
    private final int[] unitsFrom;
    private final long price;
    private final boolean uniform;
    private final boolean free;

    PriceUnits(Frontier frontier) {
        int n = frontier.size();
        long divisor = 0;
        boolean zero = false;
        for (int t = 0; t < n; t++) {
            divisor = gcd(frontier.price(t), divisor);
            zero |= frontier.price(t) == 0;
        }
        price = Math.max(1, divisor);
        free = zero;
        units = new int[n];
        unitsFrom = new int[n + 1];
        boolean equal = true;
        for (int t = n - 1; t >= 0; t--) {
            units[t] = (int) (frontier.price(t) / price);
            unitsFrom[t] = Math.addExact(unitsFrom[t + 1], units[t]);
            equal &= units[t] <= 1;
        }
        uniform = equal;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    int units(int t) {
        return units[t];
    }

    /** Units of the nodes decided at or after a step. */
    int unitsFrom(int t) {
        return unitsFrom[t];
    }

    /** Price of one unit, in turns. */
    long price() {
        return price;
    }

    /** Whether units count nodes. */
    boolean isUniform() {
        return uniform;
    }

    /** First number of units worth asking about: a lattice loop has evenly many nodes. */
    int first() {
        return step() == 2 ? units.length % 2 : 0;
    }

    /** From one number of units to the next possible: 2 if every node is one unit. */
    int step() {
        return uniform && !free ? 2 : 1;
    }
}
