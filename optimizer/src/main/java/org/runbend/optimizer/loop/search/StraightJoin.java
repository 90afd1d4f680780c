package org.runbend.optimizer.loop.search;

import org.runbend.optimizer.lattice.StraightCost;

/**
 * Walks along a loop made of parts that two passes decided, and adds up what straight pieces cost that lie over the links between
 * them and were not counted by either; the labels are those of {@link StraightPieces}.
 */
final class StraightJoin {
    private final StraightCost price;
    private final int most;
    private int straight;
    private long cost;

    StraightJoin(StraightCost price) {
        this.price = price;
        this.most = price.mostCounted();
    }

    /** Whether straight pieces cost anything. */
    boolean counts() {
        return !price.isNone();
    }

    /** Begins with a piece that is as good as long; a first round without counting says what it is. */
    void begin() {
        straight = most + 1;
        cost = 0;
    }

    /** Passes from one part to the next over a link, given the labels that both have of it. */
    void cross(int label, int beyond, boolean counting) {
        boolean end = (label == StraightPieces.CORNER) != (beyond == StraightPieces.CORNER);
        cost += counting && end ? price.end() : 0;
    }

    /** Passes a part from one of its ends to the other, given their labels. */
    void pass(int enters, int leaves, boolean counting) {
        if (enters > most + StraightPieces.CORNER) {
            straight = Math.min(most + 1, straight + enters - most - StraightPieces.CORNER);
            return;
        }
        if (enters != StraightPieces.LONG && counting) {
            int all = straight + enters - StraightPieces.CORNER;
            cost += price.extra(all);
        }
        straight = leaves == StraightPieces.LONG ? most + 1 : leaves - StraightPieces.CORNER;
    }

    /** What was counted. */
    long cost() {
        return cost;
    }
}
