package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Point;

/** Takes corners out of lines that no machine can follow and no eye can see: ones too near to the next, and ones on a line. */
final class Smooth {
    /** A side shorter than this is none: programs drop it, and take the line for an open one. Own choice, mm. */
    private static final double SHORTEST = 0.03;

    /** A corner nearer than this to the line between its neighbours is none. Chords of arcs stand off ten times as far. */
    private static final double FLAT = 0.0012;

    private Smooth() {}

    /** The closed line with fewer corners; nowhere is it farther off than the shortest side. */
    static List<Point> ring(List<Point> corners) {
        List<Point> left = new ArrayList<>(corners);
        for (boolean less = true; less && left.size() > 3; ) {
            less = dropOne(left);
        }
        return left;
    }

    private static boolean dropOne(List<Point> ring) {
        for (int i = 0; i < ring.size(); i++) {
            int next = (i + 1) % ring.size();
            if (ring.get(i).distance(ring.get(next)) < SHORTEST) {
                ring.remove(off(ring, i) <= off(ring, next) ? i : next);
                return true;
            }
            if (off(ring, i) < FLAT) {
                ring.remove(i);
                return true;
            }
        }
        return false;
    }

    /** How far a corner is from the line between its neighbours. */
    private static double off(List<Point> ring, int i) {
        int n = ring.size();
        return Places.away(ring.get(i), ring.get((i + n - 1) % n), ring.get((i + 1) % n));
    }
}
