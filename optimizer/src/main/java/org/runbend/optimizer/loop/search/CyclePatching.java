package org.runbend.optimizer.loop.search;

import java.util.Arrays;

/**
 * Patches cycles into one: where two facing links of a unit square belong to different cycles, the square's other two links
 * take their place. Cheapest change of turns first; cycles that nothing joins to the port's are left out. Then the cycle
 * bulges, likewise square by square, over pairs of nodes that were left out. Which link serves as port never changes.
 *
 * <p>Source: Karp, A patching algorithm for the nonsymmetric traveling-salesman problem, SIAM Journal on Computing 8(4), 1979;
 * from memory; here over unit squares of the lattice.
 */
final class CyclePatching {
    private final Frontier frontier;
    private final int[] legs;
    private final int[] cycle;
    private final int portLink;

    /** For legs by step; the port link is used. */
    CyclePatching(Frontier frontier, int[] legs, int portLink) {
        this.frontier = frontier;
        this.legs = legs.clone();
        this.cycle = new int[legs.length];
        this.portLink = portLink;
    }

    /** Legs of one cycle through the port link. */
    int[] patch() {
        label();
        while (flipBest(this::joins, Integer.MAX_VALUE)) {
            label();
        }
        for (int t = 0; t < legs.length; t++) {
            legs[t] = cycle[t] == cycle[portLink / 4] ? legs[t] : 0;
        }
        boolean grown = true;
        while (grown) {
            grown = flipBest(this::bulges, 0);
        }
        return legs.clone();
    }

    /** Label of each step's cycle, -1 for nodes left out; of the cycles as they were given. */
    int[] cycles() {
        label();
        return cycle.clone();
    }

    private void label() {
        Arrays.fill(cycle, -1);
        for (int start = 0; start < legs.length; start++) {
            int t = start;
            int back = -1;
            while (legs[t] != 0 && cycle[t] < 0) {
                cycle[t] = start;
                int out = Integer.numberOfTrailingZeros(back < 0 ? legs[t] : legs[t] & ~(1 << back));
                t = frontier.otherEnd(t, out);
                back = out ^ 2;
            }
        }
    }

    /** Whether a square may be flipped whose side h is used. */
    private interface Rule {
        boolean allows(int[] square, int h);
    }

    /** Flips the square that costs least, among equals the first; false if there is none below the limit. */
    private boolean flipBest(Rule rule, int limit) {
        int best = -1;
        int least = limit;
        for (int t = 0; t < legs.length; t++) {
            int[] square = square(t);
            for (int h = 0; square.length > 0 && h < 4; h++) {
                if (rule.allows(square, h)) {
                    int change = flip(square, false);
                    if (change < least) {
                        least = change;
                        best = t;
                    }
                }
            }
        }
        if (best >= 0) {
            flip(square(best), true);
        }
        return best >= 0;
    }

    /** The unit square with this node at its south-west, anticlockwise; empty if a node or link is missing. */
    private int[] square(int t) {
        int[] square = {t, 0, 0, 0};
        for (int side = 0; side < 4; side++) {
            int next = frontier.otherEnd(square[side], side);
            if (next < 0) {
                return new int[0];
            }
            square[(side + 1) % 4] = next;
        }
        return square;
    }

    /** Whether sides h and h + 2 are used, not the others, by two cycles, and neither is the port. */
    private boolean joins(int[] square, int h) {
        if (h > 1) {
            return false;
        }
        for (int side = 0; side < 4; side++) {
            boolean used = (legs[square[side]] >> side & 1) == 1;
            if (used != (side % 2 == h)) {
                return false;
            }
            if (isPort(square, side)) {
                return false;
            }
        }
        return cycle[square[h]] != cycle[square[h + 2]];
    }

    /** Whether side h is used, is not the port, and both nodes facing it are left out. */
    private boolean bulges(int[] square, int h) {
        return (legs[square[h]] >> h & 1) == 1
                && legs[square[(h + 2) % 4]] == 0
                && legs[square[(h + 3) % 4]] == 0
                && !isPort(square, h);
    }

    private boolean isPort(int[] square, int side) {
        int next = square[(side + 1) % 4];
        return 4 * square[side] + side == portLink || 4 * next + (side ^ 2) == portLink;
    }

    /** Change of turns and prices by the flip; beyond all measure if a corner is forbidden. */
    private int flip(int[] square, boolean doIt) {
        int change = 0;
        for (int corner = 0; corner < 4; corner++) {
            int t = square[corner];
            int outward = 1 << corner;
            int inward = 1 << ((corner + 1) % 4);
            int flipped = legs[t] ^ outward ^ inward;
            boolean excused = t == portLink / 4 || t == frontier.otherEnd(portLink / 4, portLink % 4);
            if (frontier.isForbidden(t, flipped) && !excused) {
                return Integer.MAX_VALUE;
            }
            change +=
                    frontier.turnCost() * ((Frontier.isCorner(flipped) ? 1 : 0) - (Frontier.isCorner(legs[t]) ? 1 : 0));
            change -= legs[t] == 0 ? (int) frontier.price(t) : 0;
            if (doIt) {
                legs[t] = flipped;
            }
        }
        return change;
    }
}
