package org.runbend.export.outline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * Joins open lines into closed ones. Ends within 0.01 mm are one place; straight lines that end near a corner of theirs are
 * made to meet in it; loose ends are then joined with the nearest loose end within the tolerance, nearest pairs first. Where more than two lines meet, the outer boundary of what hangs together
 * is followed; lines that end loose are no part of a closed one.
 */
final class Chaining {
    /** Where more lines meet or run side by side, nobody has drawn a floor; what takes long there is left. */
    private static final int CROWD = 200;

    /** Turns that may be weighed while boundaries are followed; a floor needs some thousand. */
    private static final long MOST_TURNS = 5_000_000;

    private final double tolerance;
    private final List<Piece> pieces;
    private final Places places = new Places(Contour.SAME);
    private final int[] from;
    private final int[] to;
    private final boolean[] used;
    private final List<Gap> closed = new ArrayList<>();
    private final List<Corner> corners = new ArrayList<>();
    private final List<Contour> contours = new ArrayList<>();
    private final List<Piece> left = new ArrayList<>();
    private Optional<Gap> open = Optional.empty();
    private double openSize;
    private int doubled;
    private int dividing;
    private long turns;
    private int[] merged;
    private List<List<Integer>> at;

    Chaining(List<Piece> pieces, double tolerance) {
        this.pieces = new ArrayList<>(pieces);
        this.tolerance = tolerance;
        from = new int[pieces.size()];
        to = new int[pieces.size()];
        used = new boolean[pieces.size()];
    }

    /** Joins what meets, and finds the closed lines. */
    void run() {
        join();
        noteOpen();
        prune();
        components();
        for (int i = 0; i < used.length; i++) {
            if (!used[i]) {
                left.add(pieces.get(i));
            }
        }
    }

    /** Joins what meets, drops what is drawn twice or has no length, and closes gaps. */
    void join() {
        for (int i = 0; i < from.length; i++) {
            Piece p = pieces.get(i);
            Vertex a = p.vertices().get(0);
            Vertex b = p.vertices().get(p.vertices().size() - 1);
            from[i] = places.of(a.x(), a.y());
            to[i] = places.of(b.x(), b.y());
        }
        merged = new int[places.size()];
        Arrays.setAll(merged, i -> i);
        dropSpecks();
        dropDoubles();
        at = piecesAtPlaces();
        joinCorners();
        joinLooseEnds();
    }

    List<Contour> contours() {
        return contours;
    }

    /** Pieces that are part of no closed line. */
    List<Piece> left() {
        return left;
    }

    /** Gaps over 0.01 mm that were closed. */
    List<Gap> closed() {
        return closed;
    }

    /** Corners where lines were made to meet. */
    List<Corner> corners() {
        return corners;
    }

    /** The gap between the ends of the largest chain that stays open. */
    Optional<Gap> open() {
        return open;
    }

    /** Size of that chain, mm. */
    double openSize() {
        return openSize;
    }

    /** Lines that were drawn twice. */
    int doubled() {
        return doubled;
    }

    /** Lines within a closed line that divide it. */
    int dividing() {
        return dividing;
    }

    /** Numbers of the pieces that meet at each place, after {@link #join}. */
    List<List<Integer>> meeting() {
        return at;
    }

    /** Whether a piece runs as it was drawn. */
    boolean isAsDrawn(int number, Piece piece) {
        return pieces.get(number).equals(piece);
    }

    /** Where a place is. */
    Point point(int place) {
        return places.at(place);
    }

    private int place(int i) {
        return merged[i];
    }

    /** Pieces of no length join nothing; a closed one is a contour by itself. */
    private void dropSpecks() {
        for (int i = 0; i < from.length; i++) {
            if (from[i] == to[i]) {
                used[i] = true;
                Piece p = pieces.get(i);
                List<Vertex> vertices = p.vertices().subList(0, p.vertices().size() - 1);
                Contour.of(p.layer(), vertices, p.curved()).ifPresent(contours::add);
            }
        }
    }

    private void dropDoubles() {
        Map<Long, List<Integer>> between = new HashMap<>();
        for (int i = 0; i < from.length; i++) {
            if (used[i]) {
                continue;
            }
            long key = ((long) Math.min(from[i], to[i]) << 32) | Math.max(from[i], to[i]);
            List<Integer> same = between.computeIfAbsent(key, k -> new ArrayList<>());
            Point middle = pieces.get(i).middle();
            List<Integer> last = same.subList(Math.max(0, same.size() - CROWD), same.size());
            if (last.stream().anyMatch(j -> pieces.get(j).middle().distance(middle) < 5 * Contour.SAME)) {
                used[i] = true;
                doubled++;
            } else {
                same.add(i);
            }
        }
    }

    private List<List<Integer>> piecesAtPlaces() {
        List<List<Integer>> lists = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            lists.add(new ArrayList<>(2));
        }
        for (int i = 0; i < from.length; i++) {
            if (!used[i]) {
                lists.get(place(from[i])).add(i);
                lists.get(place(to[i])).add(i);
            }
        }
        return lists;
    }

    private int[] looseEnds() {
        return IntStream.range(0, at.size()).filter(i -> at.get(i).size() == 1).toArray();
    }

    /** A corner of two straight lines may lie as far from each end as a gap is wide. */
    private record Meeting(int[] ends, Corner corner) {}

    /** Lines that cross or end shortly before or behind a corner are made to meet in it, nearest first. */
    private void joinCorners() {
        List<Meeting> meetings = new ArrayList<>();
        for (int[] p : places.pairsWithin(looseEnds(), 2 * tolerance)) {
            Corner.of(arriving(p[0]), arriving(p[1]), tolerance).ifPresent(c -> meetings.add(new Meeting(p, c)));
        }
        meetings.sort(Comparator.<Meeting>comparingDouble(m -> m.corner.off())
                .thenComparingInt(m -> m.ends[0])
                .thenComparingInt(m -> m.ends[1]));
        for (Meeting m : meetings) {
            if (isLoose(m.ends[0]) && isLoose(m.ends[1])) {
                move(m.ends[0], m.corner.at());
                move(m.ends[1], m.corner.at());
                merge(m.ends[0], m.ends[1]);
                corners.add(m.corner);
            }
        }
    }

    private boolean isLoose(int place) {
        return at.get(place).size() == 1;
    }

    /** The piece of a loose end, turned so that it ends there. */
    private Piece arriving(int place) {
        return leaving(at.get(place).get(0), place).reversed();
    }

    private void move(int place, Point corner) {
        int number = at.get(place).get(0);
        Piece moved = arriving(place).endingAt(corner);
        pieces.set(number, place(to[number]) == place ? moved : moved.reversed());
    }

    private void merge(int place, int other) {
        merged[other] = place;
        at.get(place).addAll(at.get(other));
        at.get(other).clear();
    }

    private void joinLooseEnds() {
        List<int[]> pairs = places.pairsWithin(looseEnds(), tolerance);
        pairs.sort(Comparator.<int[]>comparingDouble(p -> places.at(p[0]).distance(places.at(p[1])))
                .thenComparingInt(p -> p[0])
                .thenComparingInt(p -> p[1]));
        boolean[] taken = new boolean[places.size()];
        for (int[] p : pairs) {
            if (!taken[p[0]] && !taken[p[1]] && !isOneShortPiece(p)) {
                taken[p[0]] = true;
                taken[p[1]] = true;
                merge(p[0], p[1]);
                closed.add(new Gap(places.at(p[0]), places.at(p[1])));
            }
        }
    }

    /** The two ends of a piece hardly longer than the gap are no gap. */
    private boolean isOneShortPiece(int[] pair) {
        return at.get(pair[0]).equals(at.get(pair[1]))
                && pieces.get(at.get(pair[0]).get(0)).length() < 3 * tolerance;
    }

    /** Finds the largest chain with two loose ends. */
    private void noteOpen() {
        boolean[] seen = new boolean[places.size()];
        for (int start = 0; start < at.size(); start++) {
            if (at.get(start).size() != 1 || seen[start]) {
                continue;
            }
            List<Integer> ends = new ArrayList<>();
            double size = walk(start, seen, ends);
            if (ends.size() == 2 && size > openSize) {
                openSize = size;
                open = Optional.of(new Gap(places.at(ends.get(0)), places.at(ends.get(1))));
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
                length += pieces.get(piece).length() / 2;
                int other = other(piece, node);
                if (!seen[other]) {
                    seen[other] = true;
                    todo.push(other);
                }
            }
        }
        return length;
    }

    /** The place at the other end of a piece. */
    int other(int piece, int node) {
        return place(from[piece]) == node ? place(to[piece]) : place(from[piece]);
    }

    /** Takes loose ends off until none is left. */
    private void prune() {
        int[] degree = at.stream().mapToInt(List::size).toArray();
        boolean[] gone = new boolean[pieces.size()];
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
            int other = other(piece, node);
            if (--degree[other] == 1) {
                loose.add(other);
            }
        }
        at.forEach(list -> list.removeIf(p -> gone[p]));
    }

    private void components() {
        boolean[] seen = new boolean[places.size()];
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
                int other = other(piece, node);
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
        Contour.of(longest.layer(), Piece.joined(ring), ring.stream().anyMatch(Piece::curved))
                .ifPresent(contours::add);
    }

    /** The only way round from a place where two pieces meet, as everywhere on it. */
    private List<Piece> ring(int start) {
        List<Piece> ring = new ArrayList<>();
        int node = start;
        int piece = at.get(start).get(0);
        do {
            ring.add(leaving(piece, node));
            node = other(piece, node);
            List<Integer> two = at.get(node);
            piece = two.get(0) == piece ? two.get(1) : two.get(0);
        } while (node != start);
        return ring;
    }

    /** A piece, turned so that it begins at a place. */
    Piece leaving(int piece, int node) {
        Piece p = pieces.get(piece);
        return place(from[piece]) == node ? p : p.reversed();
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
            double area = Contour.of("", Piece.joined(ring), false)
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
        return places.y(node);
    }

    private List<Piece> face(int start, int first) {
        List<Piece> ring = new ArrayList<>();
        int node = start;
        int piece = first;
        do {
            Piece way = leaving(piece, node);
            ring.add(way);
            node = other(piece, node);
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
            double turn = (leaving(piece, node).heading() - back) % (2 * Math.PI);
            double anticlockwise = turn <= 0 ? turn + 2 * Math.PI : turn;
            if (anticlockwise < least) {
                least = anticlockwise;
                best = piece;
            }
        }
        return best;
    }
}
