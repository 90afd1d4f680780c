package org.runbend.export.outline;

import java.util.List;
import java.util.Optional;
import org.runbend.export.drawing.ArcFitting;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/** Arcs in place of the chords that somebody drew for them, where the ends of the chords lie on one within a tolerance. */
final class Bends {
    /** Chords that lie farther off an arc than this are sides of their own, mm. */
    private static final double MOST_SAGITTA = 3;

    private static final double MOST_TURN = 20;
    private static final double LEAST_SWEEP = 25;
    private static final int LEAST_CHORDS = 4;
    /** Ends on an arc to a fiftieth of a millimetre are looked for first, so that straight lines beside it stay what they are. */
    private static final double FINE = 0.02;

    /** However wide gaps may be, ends of chords lie nearer to their arc, mm. */
    private static final double COARSE = 0.5;

    private Bends() {}

    /**
     * A line with the arcs that were found.
     *
     * @param vertices of the line
     * @param arcs how many were found
     * @param chords how many chords stood for them
     * @param off how far a chord lay off its arc at most, mm
     * @param near a place near the first
     * @param curve whether it was a curve, of which the chords are ours
     */
    record Found(List<Vertex> vertices, int arcs, int chords, double off, Point near, boolean curve) {
        String words() {
            if (curve) {
                return "a spline was taken for the arc that it stands for (within "
                        + Decimals.of(Math.max(0.001, off), 3) + " mm), near " + FloorReading.shown(near);
            }
            return chords + " chords were taken for the " + (arcs == 1 ? "arc" : arcs + " arcs")
                    + " that they stand for (up to " + Decimals.of(Math.max(0.001, off), 3) + " mm off), near "
                    + FloorReading.shown(near);
        }
    }

    /** The line with arcs. */
    static Found of(List<Vertex> vertices, boolean closed, double tolerance, double leastRadius) {
        ArcFitting.Limits wide = new ArcFitting.Limits(
                Math.min(COARSE, Math.max(FINE, tolerance)),
                MOST_SAGITTA,
                MOST_TURN,
                LEAST_CHORDS,
                LEAST_SWEEP,
                leastRadius);
        ArcFitting.Fitted fine = ArcFitting.fit(vertices, closed, wide.within(FINE));
        ArcFitting.Fitted all = ArcFitting.fit(fine.vertices(), closed, wide);
        return new Found(
                all.vertices(),
                fine.arcs() + all.arcs(),
                fine.chords() + all.chords(),
                Math.max(fine.off(), all.off()),
                all.vertices().stream()
                        .filter(v -> v.bulge() != 0)
                        .map(Vertex::point)
                        .findFirst()
                        .orElse(vertices.get(0).point()),
                false);
    }

    /** The one arc or circle that a curve is; empty if it is none. */
    static Optional<Found> whole(List<Vertex> vertices, boolean closed, double tolerance) {
        Found found = of(vertices, closed, tolerance, FINE);
        boolean one = found.arcs() == 1
                && found.vertices().size() <= (closed ? 2 : 3)
                && found.vertices().stream()
                        .limit(closed ? 2 : found.vertices().size() - 1L)
                        .allMatch(v -> v.bulge() != 0);
        return one
                ? Optional.of(new Found(found.vertices, found.arcs, found.chords, found.off, found.near, true))
                : Optional.empty();
    }

    /** A closed line with arcs; one of curves that are none stays as it is. */
    static Contour fitted(Contour contour, double tolerance, double leastRadius, List<Found> into) {
        if (contour.curved() || contour.path().vertices().size() <= LEAST_CHORDS) {
            return contour;
        }
        Found found = of(contour.path().vertices(), true, tolerance, leastRadius);
        if (found.arcs() == 0) {
            return contour;
        }
        Optional<Contour> better = Contour.of(contour.layer(), found.vertices(), false);
        better.ifPresent(c -> into.add(found));
        return better.orElse(contour);
    }
}
