package org.runbend.optimizer.tape;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Point;

/** Measures the sides between neighbouring corners, curved ones by chord and rise. */
final class SideMeasuring {
    /** A curve flatter than this cannot be told from a straight side with a tape, mm. */
    private static final double FLAT = 1;

    /** Chords stand for their arc within this, mm, and their ends lie on it within that. */
    private static final double CHORD = 0.51;

    private static final double SAME = 0.01;

    private final List<Point> outline;
    private final List<TapeSheet.Corner> corners;

    SideMeasuring(List<Point> outline, List<TapeSheet.Corner> corners) {
        this.outline = outline;
        this.corners = corners;
    }

    List<TapeSheet.Side> sides() {
        int step = isAnticlockwise() ? 1 : -1;
        List<TapeSheet.Side> sides = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            sides.add(side(corners.get(i), corners.get((i + 1) % corners.size()), step));
        }
        return sides;
    }

    private boolean isAnticlockwise() {
        double twice = 0;
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get(i);
            Point b = outline.get((i + 1) % outline.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice > 0;
    }

    private TapeSheet.Side side(TapeSheet.Corner from, TapeSheet.Corner to, int step) {
        Point a = from.at();
        Point b = to.at();
        double length = a.distance(b);
        double rise = 0;
        Point crest = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
        for (int i = Math.floorMod(from.index() + step, outline.size());
                i != to.index();
                i = Math.floorMod(i + step, outline.size())) {
            Point p = outline.get(i);
            // The floor lies to the left of the way round, so what lies to the right bulges out.
            double out = out(a, b, p);
            if (Math.abs(out) > Math.abs(rise)) {
                rise = out;
                crest = p;
            }
        }
        boolean flat = Math.abs(rise) < FLAT;
        return flat
                ? new TapeSheet.Side(from.name(), to.name(), length, 0, crest)
                : arched(from, to, step, rise, crest);
    }

    /**
     * A side whose chords end on one arc rises as far as the arc, which may lie half a millimetre beyond the crest of the chords.
     * With the chord from -L/2 to L/2 and (u, h) on the circle about (0, k): k = (u^2 + h^2 - L^2 / 4) / 2h.
     */
    private TapeSheet.Side arched(TapeSheet.Corner from, TapeSheet.Corner to, int step, double rise, Point crest) {
        Point a = from.at();
        Point b = to.at();
        double length = a.distance(b);
        double u = along(a, b, crest);
        double k = (u * u + rise * rise - length * length / 4) / (2 * rise);
        double radius = Math.sqrt(length * length / 4 + k * k);
        double apex = k + Math.signum(rise) * radius;
        boolean round = Math.abs(apex - rise) < CHORD;
        for (int i = Math.floorMod(from.index() + step, outline.size());
                i != to.index();
                i = Math.floorMod(i + step, outline.size())) {
            double v = along(a, b, outline.get(i));
            double h = out(a, b, outline.get(i));
            round &= Math.abs(Math.sqrt(v * v + (h - k) * (h - k)) - radius) < SAME;
        }
        if (!round) {
            return new TapeSheet.Side(from.name(), to.name(), length, rise, crest);
        }
        Point top = new Point(
                (a.x() + b.x()) / 2 + apex * (b.y() - a.y()) / length,
                (a.y() + b.y()) / 2 - apex * (b.x() - a.x()) / length);
        return new TapeSheet.Side(from.name(), to.name(), length, apex, top);
    }

    /** How far a point lies from the middle of a chord, along it, mm. */
    private static double along(Point a, Point b, Point p) {
        double x = p.x() - (a.x() + b.x()) / 2;
        double y = p.y() - (a.y() + b.y()) / 2;
        return (x * (b.x() - a.x()) + y * (b.y() - a.y())) / a.distance(b);
    }

    /** How far a point lies to the right of the way from a to b, mm. */
    private static double out(Point a, Point b, Point p) {
        return ((p.x() - a.x()) * (b.y() - a.y()) - (p.y() - a.y()) * (b.x() - a.x())) / a.distance(b);
    }
}
