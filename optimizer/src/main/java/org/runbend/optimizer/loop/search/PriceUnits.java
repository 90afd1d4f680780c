package org.runbend.optimizer.loop.search;

import java.util.Arrays;

/** Prices of left-out nodes as multiples of their greatest common divisor, so that a sum of them can be counted. */
final class PriceUnits {
    private final int[] units;
    private final int[] unitsFrom;
    private final long price;
    private final boolean uniform;
    private final boolean free;
    private final int first;
    private final boolean inside;

    /**
     * No units: what is left out is part of the shape's cost. Where a place left out costs about as much as a turn, there would be
     * many numbers of units to be asked one by one.
     */
    static PriceUnits inside(Frontier frontier) {
        return new PriceUnits(new int[frontier.size()], 1, false, true, 0, true);
    }

    /** Units that are counted beside the shape. */
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
        first = equal ? unbalanced(frontier) : 0;
        inside = false;
    }

    private PriceUnits(int[] units, long price, boolean uniform, boolean free, int first, boolean inside) {
        this.inside = inside;
        int n = units.length;
        this.units = units;
        this.unitsFrom = new int[n + 1];
        for (int t = n - 1; t >= 0; t--) {
            unitsFrom[t] = unitsFrom[t + 1] + units[t];
        }
        this.price = price;
        this.uniform = uniform;
        this.free = free;
        this.first = first;
    }

    /** The same units for the nodes of a window, given by their steps. */
    PriceUnits within(int[] steps) {
        return new PriceUnits(unitsAt(steps), price, false, false, 0, inside);
    }

    /** The same units in another order of all nodes, given by their steps. */
    PriceUnits inOrder(int[] steps) {
        return new PriceUnits(unitsAt(steps), price, uniform, free, first, inside);
    }

    private int[] unitsAt(int[] steps) {
        return Arrays.stream(steps).map(this::units).toArray();
    }

    /**
     * A loop has as many even nodes as odd ones, so the surplus of one kind is left out; nodes of price 0 first. If there
     * are none of these, the surplus has the parity of the number of nodes, as a loop's length is even.
     */
    private static int unbalanced(Frontier frontier) {
        int surplus = 0;
        int freeEven = 0;
        int freeOdd = 0;
        for (int t = 0; t < frontier.size(); t++) {
            boolean even = frontier.isEven(t);
            surplus += even ? 1 : -1;
            freeEven += even && frontier.price(t) == 0 ? 1 : 0;
            freeOdd += !even && frontier.price(t) == 0 ? 1 : 0;
        }
        return Math.max(0, surplus > 0 ? surplus - freeEven : -surplus - freeOdd);
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

    /** Whether what is left out is part of the shape's cost. */
    boolean isInside() {
        return inside;
    }

    /** Price of one unit, in turns. */
    long price() {
        return price;
    }

    /** Whether units count nodes. */
    boolean isUniform() {
        return uniform;
    }

    /** Least number of units that a loop can leave out. */
    int first() {
        return first;
    }

    /** From one number of units to the next possible: 2 if every node is one unit. */
    int step() {
        return uniform && !free ? 2 : 1;
    }
}
