package org.runbend.optimizer.loop.search;

/**
 * Walks along a loop made of parts that two passes decided, and adds up the straight pieces that lie over the links between them
 * and are too short for a plate; the labels are those of {@link StraightPieces}.
 */
final class StraightJoin {
    private final int most;
    private final int cost;
    private int straight;
    private int charged;

    StraightJoin(int most, int cost) {
        this.most = most;
        this.cost = cost;
    }

    /** Whether short pieces cost anything. */
    boolean counts() {
        return most > 0;
    }

    /** Begins with a piece that is as good as long; a first round without counting says what it is. */
    void begin() {
        straight = most + 1;
        charged = 0;
    }

    /** Passes a part from one of its ends to the other, given their labels. */
    void pass(int enters, int leaves, boolean counting) {
        if (enters > most + 1) {
            straight = Math.min(most + 1, straight + enters - most - 1);
            return;
        }
        if (enters != StraightPieces.LONG && counting) {
            int all = straight + enters - 1;
            charged += all <= most ? all : 0;
        }
        straight = leaves == StraightPieces.LONG ? most + 1 : leaves - 1;
    }

    /** What the pieces counted cost. */
    long cost() {
        return (long) cost * charged;
    }
}
