package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A straight piece of a loop between two corners that is too short for a plate.
 *
 * @param start step of its first corner
 * @param end step of its other corner
 * @param heading from the one to the other
 * @param straight steps of the nodes passed straight, one or more
 */
record ShortPiece(int start, int end, int heading, List<Integer> straight) {
    /** Copies the list. */
    ShortPiece {
        straight = List.copyOf(straight);
    }

    /** The piece that leaves a corner by a heading; empty if it is none or passes no node. */
    static Optional<ShortPiece> from(Frontier frontier, int[] legs, int corner, int heading) {
        List<Integer> steps = new ArrayList<>();
        int t = frontier.otherEnd(corner, heading);
        while (!Frontier.isCorner(legs[t])) {
            if (steps.size() == frontier.mostShort()) {
                return Optional.empty();
            }
            steps.add(t);
            t = frontier.otherEnd(t, heading);
        }
        return steps.isEmpty() ? Optional.empty() : Optional.of(new ShortPiece(corner, t, heading, steps));
    }
}
