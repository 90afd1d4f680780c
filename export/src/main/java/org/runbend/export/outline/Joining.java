package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * Joins open lines at their ends. Ends within 0.01 mm are one place; straight lines that end near a corner of theirs are
 * made to meet in it; loose ends are then joined with the nearest loose end within the tolerance, nearest pairs first.
 */
final class Joining {
    /** Where more lines run side by side, what takes long is left. */
    private static final int CROWD = 200;

    private final double tolerance;
    private final List<Piece> pieces;
    private final Places places = new Places(Contour.SAME);
    private final int[] from;
    private final int[] to;
    private final boolean[] dropped;
    private final List<Gap> gaps = new ArrayList<>();
    private final List<Corner> corners = new ArrayList<>();
    private final List<Gap> met = new ArrayList<>();
    private final List<Contour> closedOnes = new ArrayList<>();
    private int doubled;
    private int[] merged;
    private List<List<Integer>> at;

    /** Joins what meets, drops what is drawn twice or has no length, and closes gaps up to the tolerance, mm. */
    Joining(List<Piece> pieces, double tolerance) {
        this.pieces = new ArrayList<>(pieces);
        this.tolerance = tolerance;
        from = new int[pieces.size()];
        to = new int[pieces.size()];
        dropped = new boolean[pieces.size()];
        join();
    }

    private void join() {
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

    /** A piece, as it was joined. */
    Piece piece(int number) {
        return pieces.get(number);
    }

    /** Which pieces are no part of anything: a copy. */
    boolean[] dropped() {
        return dropped.clone();
    }

    /** Lines that are closed by themselves. */
    List<Contour> closedOnes() {
        return closedOnes;
    }

    /** Gaps over 0.01 mm that were closed. */
    List<Gap> gaps() {
        return gaps;
    }

    /** Ends as they were drawn that were joined, over gaps and at corners alike. */
    List<Gap> met() {
        return met;
    }

    /** Corners where lines were made to meet. */
    List<Corner> corners() {
        return corners;
    }

    /** Lines that were drawn twice. */
    int doubled() {
        return doubled;
    }

    /** Numbers of the pieces that meet at each place. */
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

    /** The place at the other end of a piece. */
    int other(int piece, int node) {
        return place(from[piece]) == node ? place(to[piece]) : place(from[piece]);
    }

    /** A piece, turned so that it begins at a place. */
    Piece leaving(int piece, int node) {
        Piece p = pieces.get(piece);
        return place(from[piece]) == node ? p : p.reversed();
    }

    /** Pieces of no length join nothing; a closed one is a contour by itself. */
    private void dropSpecks() {
        for (int i = 0; i < from.length; i++) {
            if (from[i] == to[i]) {
                dropped[i] = true;
                Piece p = pieces.get(i);
                List<Vertex> vertices = p.vertices().subList(0, p.vertices().size() - 1);
                Contour.of(p.layer(), vertices, p.curved()).ifPresent(closedOnes::add);
            }
        }
    }

    private void dropDoubles() {
        Map<Long, List<Integer>> between = new HashMap<>();
        for (int i = 0; i < from.length; i++) {
            if (dropped[i]) {
                continue;
            }
            long key = ((long) Math.min(from[i], to[i]) << 32) | Math.max(from[i], to[i]);
            List<Integer> same = between.computeIfAbsent(key, k -> new ArrayList<>());
            Point middle = pieces.get(i).middle();
            List<Integer> last = same.subList(Math.max(0, same.size() - CROWD), same.size());
            if (last.stream().anyMatch(j -> pieces.get(j).middle().distance(middle) < 5 * Contour.SAME)) {
                dropped[i] = true;
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
            if (!dropped[i]) {
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
    private record Meeting(int a, int b, Corner corner) {}

    /** Lines that cross or end shortly before or behind a corner are made to meet in it, nearest first. */
    private void joinCorners() {
        List<Meeting> meetings = new ArrayList<>();
        for (int[] p : places.pairsWithin(looseEnds(), 2 * tolerance)) {
            Corner.of(arriving(p[0]), arriving(p[1]), tolerance)
                    .ifPresent(c -> meetings.add(new Meeting(p[0], p[1], c)));
        }
        meetings.sort(Comparator.<Meeting>comparingDouble(m -> m.corner.off())
                .thenComparingInt(m -> m.a)
                .thenComparingInt(m -> m.b));
        for (Meeting m : meetings) {
            if (isLoose(m.a) && isLoose(m.b)) {
                met.add(new Gap(places.at(m.a), places.at(m.b)));
                move(m.a, m.corner.at());
                move(m.b, m.corner.at());
                merge(m.a, m.b);
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
                gaps.add(new Gap(places.at(p[0]), places.at(p[1])));
                met.add(gaps.get(gaps.size() - 1));
            }
        }
    }

    /** The two ends of a piece hardly longer than the gap are no gap. */
    private boolean isOneShortPiece(int[] pair) {
        return at.get(pair[0]).equals(at.get(pair[1]))
                && pieces.get(at.get(pair[0]).get(0)).length() < 3 * tolerance;
    }
}
