package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.runbend.export.drawing.Point;

/** Follows joined pieces from loose end to loose end. */
final class OpenLines {
    /**
     * Pieces one after the other.
     *
     * @param pieces each beginning where the one before ends, in the direction of the one that was drawn first
     */
    record Chain(List<Piece> pieces) {
        Point start() {
            return pieces.get(0).start();
        }

        Point end() {
            return pieces.get(pieces.size() - 1).end();
        }
    }

    private final Joining joined;
    private final boolean[] seen;
    private final List<Chain> chains = new ArrayList<>();

    /** The lines of pieces that were joined, where no more than two meet. */
    OpenLines(Joining joined, int pieces) {
        this.joined = joined;
        this.seen = new boolean[pieces];
        List<List<Integer>> meeting = joined.meeting();
        for (int place = 0; place < meeting.size(); place++) {
            if (meeting.get(place).size() == 1 && !seen[meeting.get(place).get(0)]) {
                chains.add(follow(place));
            }
        }
    }

    /** A place where more than two pieces meet, if there is one. */
    static Optional<Point> branching(Joining joined) {
        for (int place = 0; place < joined.meeting().size(); place++) {
            if (joined.meeting().get(place).size() > 2) {
                return Optional.of(joined.point(place));
            }
        }
        return Optional.empty();
    }

    /** Lines with two loose ends, in the order of the drawing. */
    List<Chain> chains() {
        return chains;
    }

    /** A place on a line without loose ends, if there is one. */
    Optional<Point> closed() {
        for (int place = 0; place < joined.meeting().size(); place++) {
            if (joined.meeting().get(place).stream().anyMatch(p -> !seen[p])) {
                return Optional.of(joined.point(place));
            }
        }
        return Optional.empty();
    }

    private Chain follow(int start) {
        List<Piece> chain = new ArrayList<>();
        int first = Integer.MAX_VALUE;
        boolean turned = false;
        int place = start;
        Optional<Integer> next = unseen(place);
        while (next.isPresent()) {
            int number = next.get();
            seen[number] = true;
            Piece piece = joined.leaving(number, place);
            chain.add(piece);
            if (number < first) {
                first = number;
                turned = !joined.isAsDrawn(number, piece);
            }
            place = joined.other(number, place);
            next = unseen(place);
        }
        return new Chain(turned ? reversed(chain) : chain);
    }

    private Optional<Integer> unseen(int place) {
        return joined.meeting().get(place).stream().filter(p -> !seen[p]).findFirst();
    }

    private static List<Piece> reversed(List<Piece> chain) {
        List<Piece> other = new ArrayList<>();
        chain.forEach(p -> other.add(p.reversed()));
        Collections.reverse(other);
        return other;
    }
}
