package org.runbend.optimizer.loop.search;

/**
 * Straight pieces between two corners that are too short for a plate: what a state must know of its open links so that such a piece is
 * seen when its second corner is decided, and what it costs then.
 *
 * <p>Of each open link that is used a state holds a label: how many nodes were passed straight since the corner at its earlier
 * end; or, where a straight stretch is open at both ends, so many nodes without a corner yet, at either end; or nothing, once they
 * are too many to count.
 */
final class StraightPieces {
    /** Too many to count, or no link. */
    static final int LONG = 0;

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final int most;
    private final int cost;
    private int[] charged = new int[16];
    private int chargedCount;

    private long[] from = {};
    private int offset;
    private long[] next = {};
    private int step;

    StraightPieces(Frontier frontier, StateEncoding encoding) {
        this.frontier = frontier;
        this.encoding = encoding;
        this.most = frontier.mostShort();
        this.cost = frontier.shortCost();
    }

    /** Labels that there are for pieces of up to so many straight nodes. */
    static int labels(int most) {
        return most == 0 ? 0 : 2 * most + 2;
    }

    /** A corner, then so many straight nodes. */
    private int corner(int straight) {
        return straight > most ? LONG : 1 + straight;
    }

    /** So many straight nodes, no corner at either end yet. */
    private int open(int straight) {
        return straight > most ? LONG : 1 + most + straight;
    }

    private boolean isOpen(int label) {
        return label > 1 + most;
    }

    /** Straight nodes that a label counts. */
    private int straight(int label) {
        return isOpen(label) ? label - 1 - most : label - 1;
    }

    /**
     * Sets the labels after a node of a step got its legs, and says what that cost; {@link #charged} then names the nodes of short
     * pieces.
     *
     * @param old states, the one before at an offset
     * @param fresh the state after, its links joined
     */
    long follow(long[] old, int at, long[] fresh, int t, int legs) {
        chargedCount = 0;
        if (most == 0) {
            return 0;
        }
        from = old;
        offset = at;
        next = fresh;
        step = t;
        int a = Integer.numberOfTrailingZeros(legs);
        int b = 31 - Integer.numberOfLeadingZeros(legs);
        int before = label(a);
        int beyond = label(b);
        clear(a);
        clear(b);
        if (Frontier.isCorner(legs)) {
            turn(a, before);
            turn(b, beyond);
        } else {
            pass(a, before, b, beyond);
        }
        return (long) cost * chargedCount;
    }

    /** A node was left out: no piece was closed. */
    void none() {
        chargedCount = 0;
    }

    /** Label of a leg that comes from a node already decided or from outside; -1 for one that leads on. */
    private int label(int h) {
        int outside = frontier.straightsOutside(step, h);
        if (outside >= 0) {
            return corner(outside);
        }
        return frontier.isEarlier(step, h) ? encoding.label(from, offset, frontier.slot(step, h)) : -1;
    }

    private void clear(int h) {
        if (frontier.isEarlier(step, h)) {
            encoding.setLabel(next, frontier.slot(step, h), LONG);
        }
    }

    private void turn(int h, int label) {
        if (label < 0) {
            encoding.setLabel(next, frontier.slot(step, h), corner(0));
        } else if (isOpen(label)) {
            encoding.setLabel(next, mate(h), corner(straight(label)));
        } else if (label != LONG) {
            charge(h, straight(label));
        }
    }

    private void pass(int a, int before, int b, int beyond) {
        if (before < 0 && beyond < 0) {
            lead(a, open(1));
            lead(b, open(1));
        } else if (before < 0) {
            pass(b, beyond, a);
        } else if (beyond < 0) {
            pass(a, before, b);
        } else {
            join(a, before, b, beyond);
        }
    }

    private void lead(int h, int label) {
        encoding.setLabel(next, frontier.slot(step, h), label);
    }

    /** Straight on from a leg that comes to one that leads on. */
    private void pass(int comes, int label, int leads) {
        if (label == LONG) {
            lead(leads, LONG);
        } else if (isOpen(label)) {
            int longer = open(straight(label) + 1);
            encoding.setLabel(next, mate(comes), longer);
            lead(leads, longer);
        } else {
            lead(leads, corner(straight(label) + 1));
        }
    }

    /** Straight between two legs that both come. */
    private void join(int a, int before, int b, int beyond) {
        boolean long1 = before == LONG;
        boolean long2 = beyond == LONG;
        int all = (long1 ? most : straight(before)) + 1 + (long2 ? most : straight(beyond));
        boolean open1 = !long1 && isOpen(before);
        boolean open2 = !long2 && isOpen(beyond);
        if (open1 && open2) {
            encoding.setLabel(next, mate(a), open(all));
            encoding.setLabel(next, mate(b), open(all));
        } else if (open1) {
            encoding.setLabel(next, mate(a), long2 ? LONG : corner(all));
        } else if (open2) {
            encoding.setLabel(next, mate(b), long1 ? LONG : corner(all));
        } else if (all <= most) {
            charge(a, straight(before));
            charge(b, straight(beyond));
            add(step, a & 1);
        }
    }

    /** The slot at the other end of a stretch that is open at both: no corner lies on it, so its ends are mates. */
    private int mate(int h) {
        return encoding.mate(from, offset, frontier.slot(step, h));
    }

    /** Charges so many nodes in the direction of a leg; those outside the frontier's nodes are counted, but have no step. */
    private void charge(int h, int straight) {
        int t = step;
        for (int i = 0; i < straight; i++) {
            t = t < 0 || frontier.straightsOutside(t, h) >= 0 ? -1 : frontier.otherEnd(t, h);
            add(t, h & 1);
        }
    }

    private void add(int t, int axis) {
        charged = chargedCount == charged.length ? java.util.Arrays.copyOf(charged, 2 * chargedCount) : charged;
        charged[chargedCount++] = t < 0 ? -1 : 2 * t + axis;
    }

    /** How many nodes were charged by the last call. */
    int charged() {
        return chargedCount;
    }

    /** One of them as 2 x step + axis (0 along the columns' direction, 1 along the rows'); -1 for one outside. */
    int charged(int i) {
        return charged[i];
    }
}
