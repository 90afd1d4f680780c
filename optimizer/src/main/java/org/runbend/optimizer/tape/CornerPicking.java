package org.runbend.optimizer.tape;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.runbend.optimizer.job.Point;

/**
 * Finds the corners of an outline that a person would call so, anticlockwise, and names them.
 *
 * <p>A vertex between two chords of one arc is none: chords of equal length that turn by equal angles and stay within half a
 * millimetre of their circle. So a floor written with an arc and its twin written with the chords have the same corners.
 */
final class CornerPicking {
    /** Chords keep half a millimetre to their arc; a little is added for the rounding of their ends. */
    private static final double SAGITTA = 0.55;

    private static final double SAME_SHARE = 0.02;
    private static final double SAME = 0.01;
    private static final int LETTERS = 26;
    /** Fewer corners than this say nothing about a shape. */
    private static final int FEWEST = 3;

    private final List<Point> outline;

    CornerPicking(List<Point> outline) {
        this.outline = List.copyOf(outline);
    }

    /** The corners with letters; the first is the one farthest to the lower left. */
    List<TapeSheet.Corner> lettered() {
        List<Integer> order = anticlockwise(picked());
        int first = order.stream()
                .min(Comparator.<Integer>comparingDouble(i ->
                                Math.rint((outline.get(i).x() + outline.get(i).y()) / SAME))
                        .thenComparingDouble(i -> outline.get(i).y()))
                .orElseThrow();
        Collections.rotate(order, -order.indexOf(first));
        List<TapeSheet.Corner> corners = new ArrayList<>();
        for (int i : order) {
            corners.add(new TapeSheet.Corner(letters(corners.size()), i, outline.get(i)));
        }
        return corners;
    }

    /** Every vertex with the name that the customer gave it, anticlockwise. */
    List<TapeSheet.Corner> named(List<String> names) {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < outline.size(); i++) {
            all.add(i);
        }
        return anticlockwise(all).stream()
                .map(i -> new TapeSheet.Corner(names.get(i), i, outline.get(i)))
                .toList();
    }

    /** A to Z, then A1 to Z1 and so on. */
    private static String letters(int index) {
        String letter = String.valueOf((char) ('A' + index % LETTERS));
        return index < LETTERS ? letter : letter + index / LETTERS;
    }

    private List<Integer> anticlockwise(List<Integer> indices) {
        List<Integer> order = new ArrayList<>(indices);
        if (twiceArea() < 0) {
            Collections.reverse(order);
        }
        return order;
    }

    private double twiceArea() {
        double twice = 0;
        for (int i = 0; i < outline.size(); i++) {
            twice += at(i).x() * at(i + 1).y() - at(i + 1).x() * at(i).y();
        }
        return twice;
    }

    /** Real corners; on a floor that is nearly all curve also its outermost points. */
    private List<Integer> picked() {
        TreeSet<Integer> picked = new TreeSet<>();
        for (int i = 0; i < outline.size(); i++) {
            if (!isOnCurve(i)) {
                picked.add(i);
            }
        }
        if (picked.size() < FEWEST) {
            for (Comparator<Point> least : List.<Comparator<Point>>of(
                    Comparator.comparingDouble(p -> p.x()),
                    Comparator.comparingDouble(p -> -p.x()),
                    Comparator.comparingDouble(p -> p.y()),
                    Comparator.comparingDouble(p -> -p.y()))) {
                picked.add(outline.indexOf(outline.stream().min(least).orElseThrow()));
            }
        }
        return List.copyOf(picked);
    }

    private boolean isOnCurve(int i) {
        double before = at(i - 1).distance(at(i));
        double after = at(i).distance(at(i + 1));
        double turn = Math.abs(turn(i));
        double sagitta = Math.max(before, after) / 2 * StrictMath.tan(turn / 4);
        return sagitta <= SAGITTA && Math.abs(before - after) <= SAME_SHARE * Math.max(before, after);
    }

    /** Radians that the outline turns at a vertex, anticlockwise positive. */
    private double turn(int i) {
        double ax = at(i).x() - at(i - 1).x();
        double ay = at(i).y() - at(i - 1).y();
        double bx = at(i + 1).x() - at(i).x();
        double by = at(i + 1).y() - at(i).y();
        return StrictMath.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }

    private Point at(int i) {
        return outline.get(Math.floorMod(i, outline.size()));
    }
}
