package org.runbend.optimizer.loop.search;

import org.runbend.optimizer.lattice.StraightCost;

/**
 * What straight pieces between two corners cost, and what a state must know of its open links so that this is seen step by step: the ends
 * of a piece as soon as both nodes of its last link are decided, a short piece when its second corner is.
 *
 * <p>Of each open link that is used a state holds a label: how many nodes were passed straight since the corner at its earlier
 * end; or, where a straight stretch is open at both ends, so many nodes without a corner yet, at either end; or nothing, once they
 * are too many to count.
 */
final class StraightPieces {
    /** Too many to count, or no link. */
    static final int LONG = 0;

    /** A corner at the earlier end. */
    static final int CORNER = 1;

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final StraightCost price;
    private final int most;
    private final int[] ends = new int[2];
    private int endCount;

    private long[] from = {};
    private int offset;
    private long[] next = {};
    private int step;

    StraightPieces(Frontier frontier, StateEncoding encoding) {
        this.frontier = frontier;
        this.encoding = encoding;
        this.price = frontier.straightCost();
        this.most = price.mostCounted();
    }

    /** How many labels there are; 0 where straight pieces cost nothing. */
    static int labels(StraightCost price) {
        return price.isNone() ? 0 : 2 * price.mostCounted() + 2;
    }

    /** A corner, then so many straight nodes. */
    private int corner(int straight) {
        return straight > most ? LONG : CORNER + straight;
    }

    /** So many straight nodes, no corner at either end yet. */
    private int open(int straight) {
        return straight > most ? LONG : CORNER + most + straight;
    }

    private boolean isOpen(int label) {
        return label > CORNER + most;
    }

    /** Straight nodes that a label counts. */
    private int straight(int label) {
        return isOpen(label) ? label - CORNER - most : label - CORNER;
    }

    /**
     * Sets the labels after a node of a step got its legs, and says what that cost; {@link #ends} then names the links at whose ends
     * a straight piece was seen to end.
     *
     * @param old states, the one before at an offset
     * @param fresh the state after, its links joined
     */
    long follow(long[] old, int at, long[] fresh, int t, int legs) {
        endCount = 0;
        if (price.isNone()) {
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
        boolean corner = Frontier.isCorner(legs);
        end(a, before, corner);
        end(b, beyond, corner);
        long cost = (long) price.end() * endCount;
        return cost + (corner ? turn(a, before) + turn(b, beyond) : pass(a, before, b, beyond));
    }

    /** A node was left out: no piece was closed. */
    void none() {
        endCount = 0;
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

    /** A piece ends over the link of a leg where one of its nodes is a corner and the other is not. */
    private void end(int h, int label, boolean corner) {
        if (label >= 0 && corner != (label == CORNER)) {
            ends[endCount++] = link(h);
        }
    }

    private int link(int h) {
        if (frontier.straightsOutside(step, h) >= 0) {
            return -1;
        }
        return h < 2 ? 2 * step + h : 2 * frontier.otherEnd(step, h) + h - 2;
    }

    private long turn(int h, int label) {
        if (label < 0) {
            encoding.setLabel(next, frontier.slot(step, h), CORNER);
        } else if (isOpen(label)) {
            encoding.setLabel(next, mate(h), corner(straight(label)));
        } else if (label != LONG) {
            return price.extra(straight(label));
        }
        return 0;
    }

    private long pass(int a, int before, int b, int beyond) {
        if (before >= 0 && beyond >= 0) {
            return join(a, before, b, beyond);
        }
        if (before < 0 && beyond < 0) {
            lead(a, open(1));
            lead(b, open(1));
        } else if (before < 0) {
            goOn(b, beyond, a);
        } else {
            goOn(a, before, b);
        }
        return 0;
    }

    private void lead(int h, int label) {
        encoding.setLabel(next, frontier.slot(step, h), label);
    }

    /** Straight on from a leg that comes to one that leads on. */
    private void goOn(int comes, int label, int leads) {
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
    private long join(int a, int before, int b, int beyond) {
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
        } else {
            return price.extra(all);
        }
        return 0;
    }

    /** The slot at the other end of a stretch that is open at both: no corner lies on it, so its ends are mates. */
    private int mate(int h) {
        return encoding.mate(from, offset, frontier.slot(step, h));
    }

    /** How many ends of straight pieces the last call has seen. */
    int ends() {
        return endCount;
    }

    /** The link of one of them, as 2 x step + heading (0 or 1) at its western or southern end; -1 for one out of a window. */
    int end(int i) {
        return ends[i];
    }
}
