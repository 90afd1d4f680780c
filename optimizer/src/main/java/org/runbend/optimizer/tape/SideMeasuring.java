package org.runbend.optimizer.tape;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Point;

/** Measures the sides between neighbouring corners, curved ones by chord and rise. */
final class SideMeasuring {
    /** A curve flatter than this cannot be told from a straight side with a tape, mm. */
    private static final double FLAT = 1;

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
            double out = ((p.x() - a.x()) * (b.y() - a.y()) - (p.y() - a.y()) * (b.x() - a.x())) / length;
            if (Math.abs(out) > Math.abs(rise)) {
                rise = out;
                crest = p;
            }
        }
        boolean flat = Math.abs(rise) < FLAT;
        return new TapeSheet.Side(from.name(), to.name(), length, flat ? 0 : rise, crest);
    }
}
