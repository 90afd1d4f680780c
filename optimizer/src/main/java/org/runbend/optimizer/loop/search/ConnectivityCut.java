package org.runbend.optimizer.loop.search;

/**
 * A loop that serves a node inside a set and one outside passes the border twice: links used across the border + 2 x
 * inner left out + 2 x outer left out >= 2.
 *
 * <p>Source: the generalized subtour elimination of cycles that may leave nodes out, Fischetti, Salazar Gonzalez and Toth, A
 * branch-and-cut algorithm for the symmetric generalized traveling salesman problem, Operations Research 45(3), 1997; from
 * memory.
 */
final class ConnectivityCut {
    private final boolean[] set;
    private final int inner;
    private final int outer;

    /** By steps; the set is taken over. */
    ConnectivityCut(boolean[] set, int inner, int outer) {
        if (!set[inner] || set[outer]) {
            throw new IllegalArgumentException("inner must lie in the set, outer outside");
        }
        this.set = set;
        this.inner = inner;
        this.outer = outer;
    }

    /** The same cut for other steps, given by what they are in this order. */
    ConnectivityCut inOrder(int[] steps) {
        boolean[] moved = new boolean[steps.length];
        int movedInner = -1;
        int movedOuter = -1;
        for (int t = 0; t < steps.length; t++) {
            moved[t] = set[steps[t]];
            movedInner = steps[t] == inner ? t : movedInner;
            movedOuter = steps[t] == outer ? t : movedOuter;
        }
        return new ConnectivityCut(moved, movedInner, movedOuter);
    }

    /** The coefficient of a node's state; each border link counts at its end in the set. */
    int coefficient(Frontier frontier, int t, int legs) {
        if (legs == 0) {
            return t == inner || t == outer ? 2 : 0;
        }
        int crossing = 0;
        for (int h = 0; set[t] && h < 4; h++) {
            crossing += (legs >> h & 1) == 1 && !set[frontier.otherEnd(t, h)] ? 1 : 0;
        }
        return crossing;
    }
}
