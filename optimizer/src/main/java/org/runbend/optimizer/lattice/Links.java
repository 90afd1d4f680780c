package org.runbend.optimizer.lattice;

import java.util.Arrays;

/**
 * Which nodes of a block are linked, by local number and heading of the leg. Usually these are the lattice's own links.
 * In a window of a loop, the pieces of the loop outside stand in as links between window nodes, and these must be used;
 * such a link may come back by any heading.
 */
public final class Links {
    /** In place of a number of nodes: the link is one of the lattice. */
    public static final int INSIDE = -1;

    private final int[] others;
    private final int[] backs;
    private final int[] musts;
    private final boolean[] excused;
    private final int[] straights;

    private Links(int size) {
        this.others = new int[4 * size];
        this.backs = new int[4 * size];
        this.musts = new int[size];
        this.excused = new boolean[size];
        this.straights = new int[4 * size];
        Arrays.fill(others, -1);
        Arrays.fill(straights, INSIDE);
    }

    /** All links of a block. */
    public static Links of(BlockGraph blockGraph) {
        Links links = new Links(blockGraph.size());
        for (int i = 0; i < blockGraph.size(); i++) {
            for (int h = 0; h < 4; h++) {
                links.others[4 * i + h] = blockGraph.neighbour(i, h);
                links.backs[4 * i + h] = h ^ 2;
            }
        }
        return links;
    }

    /**
     * The links inside a window of a loop, and its pieces outside.
     *
     * @param blockGraph all nodes
     * @param legs legs of the loop by local number
     * @param inside the window by local number
     * @param portLink the loop's port as 4 x local number + heading; it stays the port
     */
    public static Links within(BlockGraph blockGraph, int[] legs, boolean[] inside, int portLink) {
        Links links = new Links(blockGraph.size());
        for (int i = 0; i < blockGraph.size(); i++) {
            for (int h = 0; inside[i] && h < 4; h++) {
                int next = blockGraph.neighbour(i, h);
                if (next >= 0 && inside[next]) {
                    links.join(i, h, next, h ^ 2);
                } else if ((legs[i] >> h & 1) == 1) {
                    links.follow(blockGraph, legs, inside, i, h);
                }
            }
        }
        int from = portLink / 4;
        int heading = portLink % 4;
        links.excuse(inside, from, heading);
        links.excuse(inside, blockGraph.neighbour(from, heading), heading ^ 2);
        return links;
    }

    private void join(int i, int h, int next, int back) {
        others[4 * i + h] = next;
        backs[4 * i + h] = back;
    }

    /** Follows the loop out of the window until it comes back. */
    private void follow(BlockGraph blockGraph, int[] legs, boolean[] inside, int start, int heading) {
        int h = heading;
        int straight = 0;
        boolean turned = false;
        int i = blockGraph.neighbour(start, heading);
        while (!inside[i]) {
            int out = Integer.numberOfTrailingZeros(legs[i] & ~(1 << (h ^ 2)));
            turned |= out != h;
            straight += turned ? 0 : 1;
            h = out;
            i = blockGraph.neighbour(i, h);
        }
        join(start, heading, i, h ^ 2);
        musts[start] |= 1 << heading;
        straights[4 * start + heading] = turned ? straight : Integer.MAX_VALUE / 2;
    }

    private void excuse(boolean[] inside, int i, int heading) {
        excused[i] = true;
        musts[i] |= inside[i] ? 1 << heading : 0;
    }

    /** Whether a piece outside begins and ends at the same node, so that nothing is left to decide. */
    public boolean closesOn(int i) {
        for (int h = 0; h < 4; h++) {
            if (others[4 * i + h] == i) {
                return true;
            }
        }
        return false;
    }

    /** Local number at the other end of a link, or -1. */
    public int other(int i, int h) {
        return others[4 * i + h];
    }

    /** Heading of the same link at its other end. */
    public int back(int i, int h) {
        return backs[4 * i + h];
    }

    /**
     * For a piece of a loop outside: nodes that it passes straight on before its first turn, from this end; {@link #INSIDE}
     * for a link of the lattice.
     */
    public int straights(int i, int h) {
        return straights[4 * i + h];
    }

    /** Legs that the node must have, as a mask. */
    public int must(int i) {
        return musts[i];
    }

    /** Whether the node may have a forbidden corner, being at the port. */
    public boolean isExcused(int i) {
        return excused[i];
    }
}
