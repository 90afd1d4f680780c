package org.runbend.export.outline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Follows joined lines round. Where more than two lines meet, the outer boundary of what hangs together is followed; lines
 * that end loose are no part of a closed one.
 */
final class Chaining {
    /** Where more lines meet, nobody has drawn a floor; what takes long there is left. */
    private static final int CROWD = 200;

    /** Turns that may be weighed while boundaries are followed; a floor needs some thousand. */
    private static final long MOST_TURNS = 5_000_000;

    private final Joining joined;
    private final List<List<Integer>> at;
    private final boolean[] used;
    private final List<Contour> contours;
    private final List<Piece> left = new ArrayList<>();
    private Optional<Gap> open = Optional.empty();
    private double openSize;
    private int dividing;
    private long turns;

    /** Closed lines of joined pieces, which are joined no further. */
    Chaining(Joining joined) {
        this.joined = joined;
        at = joined.meeting();
        used = joined.dropped();
        contours = new ArrayList<>(joined.closedOnes());
    }

    /** Finds the closed lines. */
    void run() {
        noteOpen();
        prune();
        components();
        for (int i = 0; i < used.length; i++) {
            if (!used[i]) {
                left.add(joined.piece(i));
            }
        }
    }

    /** What was followed. */
    Joining joined() {
        return joined;
    }

    List<Contour> contours() {
        return contours;
    }

    /** Pieces that are part of no closed line. */
    List<Piece> left() {
        return left;
    }

    /** The gap between the ends of the largest chain that stays open. */
    Optional<Gap> open() {
        return open;
    }

    /** Lines within a closed line that divide it. */
    int dividing() {
        return dividing;
    }

    /** Finds the largest chain with two loose ends. */
    private void noteOpen() {
        boolean[] seen = new boolean[at.size()];
        for (int start = 0; start < at.size(); start++) {
            if (at.get(start).size() != 1 || seen[start]) {
                continue;
            }
            List<Integer> ends = new ArrayList<>();
            double size = walk(start, seen, ends);
            if (ends.size() == 2 && size > openSize) {
                openSize = size;
                open = Optional.of(new Gap(joined.point(ends.get(0)), joined.point(ends.get(1))));
            }
        }
    }

    /** Visits all that hangs together with a place; gives its length and its loose ends. */
    private double walk(int start, boolean[] seen, List<Integer> ends) {
        double length = 0;
        Deque<Integer> todo = new ArrayDeque<>(List.of(start));
        seen[start] = true;
        while (!todo.isEmpty()) {
            int node = todo.pop();
            if (at.get(node).size() == 1) {
                ends.add(node);
            }
            for (int piece : at.get(node)) {
                length += joined.piece(piece).length() / 2;
                int other = joined.other(piece, node);
                if (!seen[other]) {
                    seen[other] = true;
                    todo.push(other);
                }
            }
        }
        return length;
    }

    /** Takes loose ends off until none is left. */
    private void prune() {
        int[] degree = at.stream().mapToInt(List::size).toArray();
        boolean[] gone = new boolean[used.length];
        Deque<Integer> loose = new ArrayDeque<>();
        for (int i = 0; i < degree.length; i++) {
            if (degree[i] == 1) {
                loose.add(i);
            }
        }
        while (!loose.isEmpty()) {
            int node = loose.pop();
            if (degree[node] != 1) {
                continue;
            }
            int piece = at.get(node).stream().filter(p -> !gone[p]).findFirst().orElseThrow();
            gone[piece] = true;
            degree[node]--;
            int other = joined.other(piece, node);
            if (--degree[other] == 1) {
                loose.add(other);
            }
        }
        at.forEach(list -> list.removeIf(p -> gone[p]));
    }

    private void components() {
        boolean[] seen = new boolean[at.size()];
        for (int start = 0; start < at.size(); start++) {
            if (at.get(start).isEmpty() || seen[start]) {
                continue;
            }
            List<Integer> ends = new ArrayList<>();
            List<Integer> inside = new ArrayList<>();
            collect(start, seen, ends, inside);
            boolean simple = ends.stream().allMatch(n -> at.get(n).size() == 2);
            boolean crowded = ends.stream().anyMatch(n -> at.get(n).size() > CROWD);
            contourOf(simple ? ring(ends.get(0)) : crowded ? List.of() : outer(ends), inside);
        }
    }

    private void collect(int start, boolean[] seen, List<Integer> nodes, List<Integer> inside) {
        Deque<Integer> todo = new ArrayDeque<>(List.of(start));
        seen[start] = true;
        while (!todo.isEmpty()) {
            int node = todo.pop();
            nodes.add(node);
            for (int piece : at.get(node)) {
                if (!used[piece]) {
                    used[piece] = true;
                    inside.add(piece);
                }
                int other = joined.other(piece, node);
                if (!seen[other]) {
                    seen[other] = true;
                    todo.push(other);
                }
            }
        }
    }

    private void contourOf(List<Piece> ring, List<Integer> inside) {
        dividing += inside.size() - Math.min(inside.size(), ring.size());
        if (ring.isEmpty()) {
            return;
        }
        Piece longest =
                ring.stream().max(Comparator.comparingDouble(Piece::length)).orElseThrow();
        Contour.of(longest.layer(), Piece.ring(ring), ring.stream().anyMatch(Piece::curved))
                .ifPresent(contours::add);
    }

    /** The only way round from a place where two pieces meet, as everywhere on it. */
    private List<Piece> ring(int start) {
        List<Piece> ring = new ArrayList<>();
        int node = start;
        int piece = at.get(start).get(0);
        do {
            ring.add(joined.leaving(piece, node));
            node = joined.other(piece, node);
            List<Integer> two = at.get(node);
            piece = two.get(0) == piece ? two.get(1) : two.get(0);
        } while (node != start);
        return ring;
    }

    /** The outer boundary: from the lowest place always the rightmost way, seen along the way come. */
    private List<Piece> outer(List<Integer> nodes) {
        int start = nodes.stream()
                .min(Comparator.<Integer>comparingDouble(n -> lowest(n)).thenComparingInt(n -> n))
                .orElseThrow();
        List<Piece> best = List.of();
        double most = 0;
        for (int first : at.get(start)) {
            List<Piece> ring = face(start, first);
            double area = Contour.of("", Piece.ring(ring), false)
                    .map(c -> c.box().width() * c.box().height())
                    .orElse(0.0);
            if (area > most) {
                most = area;
                best = ring;
            }
        }
        return best;
    }

    private double lowest(int node) {
        return joined.point(node).y();
    }

    private List<Piece> face(int start, int first) {
        List<Piece> ring = new ArrayList<>();
        int node = start;
        int piece = first;
        do {
            Piece way = joined.leaving(piece, node);
            ring.add(way);
            node = joined.other(piece, node);
            piece = rightmost(node, piece, way);
            turns += at.get(node).size();
        } while (!(node == start && piece == first) && turns < MOST_TURNS);
        return turns < MOST_TURNS ? ring : List.of();
    }

    /** The piece that turns most to the right of the way come; back only if there is no other. */
    private int rightmost(int node, int come, Piece way) {
        double back = way.reversed().heading();
        int best = come;
        double least = Double.POSITIVE_INFINITY;
        for (int piece : at.get(node)) {
            if (piece == come) {
                continue;
            }
            double turn = (joined.leaving(piece, node).heading() - back) % (2 * Math.PI);
            double anticlockwise = turn <= 0 ? turn + 2 * Math.PI : turn;
            if (anticlockwise < least) {
                least = anticlockwise;
                best = piece;
            }
        }
        return best;
    }
}
