package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A straight piece of a loop between two corners.
 *
 * @param steps of all its nodes in order, its two corners included
 * @param heading from the first to the last
 */
record StraightPiece(List<Integer> steps, int heading) {
    /** Copies the list. */
    StraightPiece {
        steps = List.copyOf(steps);
    }

    /** The piece that leaves a corner by a heading; empty if it passes no node. */
    static Optional<StraightPiece> from(Frontier frontier, int[] legs, int corner, int heading) {
        List<Integer> steps = new ArrayList<>(List.of(corner));
        int t = frontier.otherEnd(corner, heading);
        while (!Frontier.isCorner(legs[t])) {
            steps.add(t);
            t = frontier.otherEnd(t, heading);
        }
        steps.add(t);
        return steps.size() == 2 ? Optional.empty() : Optional.of(new StraightPiece(steps, heading));
    }

    /** Nodes passed straight. */
    int nodes() {
        return steps.size() - 2;
    }

    /** Steps of the nodes at both ends of its first link and of its last. */
    int[][] ends() {
        int n = steps.size();
        return new int[][] {{steps.get(0), steps.get(1)}, {steps.get(n - 1), steps.get(n - 2)}};
    }
}
