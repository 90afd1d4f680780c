package org.runbend.optimizer.choice;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.KitPlan;

/**
 * How far warmth differs over a floor. Coolant cools evenly on its way, so the warmth of pipe is its place along the loop: 1
 * where the flow comes in, 0 where the return leaves. A place on straight pipe is half as warm as its own pipe and half as the
 * mean of the pipes one spacing beside it. The unevenness is the standard deviation of all places, by length: 0 where flow
 * lies beside return everywhere, up to 1/sqrt(12) = 0.29 where the loop winds from one end of the floor to the other.
 */
final class Unevenness {
    /** How far off a spacing a neighbour may lie, as a share of it. */
    private static final double NEAR = 0.25;

    private final double spacing;
    private final List<Piece> pieces = new ArrayList<>();

    private Unevenness(double spacing, List<Breakdown> loops) {
        this.spacing = spacing;
        loops.forEach(this::add);
    }

    static double of(KitPlan plan) {
        return of(
                plan.job().layout().spacing(),
                plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList());
    }

    /** The unevenness of loops that lie beside each other, from 0. */
    static double of(double spacing, List<Breakdown> loops) {
        return new Unevenness(spacing, loops).deviation();
    }

    /**
     * Straight pipe.
     *
     * @param run the run
     * @param start warmth where it begins
     * @param fall what warmth falls by, for each mm
     */
    private record Piece(Element.Run run, double start, double fall) {
        double warmth(double along) {
            return start - fall * along;
        }
    }

    private void add(Breakdown loop) {
        double done = 0;
        double fall = 1 / loop.floorLength();
        for (Element e : loop.elements()) {
            if (e instanceof Element.Run run) {
                pieces.add(new Piece(run, 1 - done * fall, fall));
            }
            done += e.length();
        }
    }

    private double deviation() {
        double length = 0;
        double sum = 0;
        double squares = 0;
        for (Piece piece : pieces) {
            int steps = (int) Math.ceil(piece.run().length() / spacing);
            double step = piece.run().length() / steps;
            for (int i = 0; i < steps; i++) {
                double warmth = place(piece, (i + 0.5) * step);
                length += step;
                sum += step * warmth;
                squares += step * warmth * warmth;
            }
        }
        double mean = length > 0 ? sum / length : 0;
        return length > 0 ? Math.sqrt(Math.max(0, squares / length - mean * mean)) : 0;
    }

    private double place(Piece piece, double along) {
        Point p = piece.run().along(along);
        double ux =
                (piece.run().to().x() - piece.run().from().x()) / piece.run().length();
        double uy =
                (piece.run().to().y() - piece.run().from().y()) / piece.run().length();
        double beside = 0;
        int count = 0;
        for (int side : new int[] {1, -1}) {
            Point q = new Point(p.x() - side * spacing * uy, p.y() + side * spacing * ux);
            double warmth = warmthAt(q, ux, uy);
            if (!Double.isNaN(warmth)) {
                beside += warmth;
                count++;
            }
        }
        double own = piece.warmth(along);
        return count == 0 ? own : (own + beside / count) / 2;
    }

    /** Warmth of the first parallel run that passes a point; not a number if none does. */
    private double warmthAt(Point q, double ux, double uy) {
        for (Piece other : pieces) {
            Element.Run run = other.run();
            double vx = (run.to().x() - run.from().x()) / run.length();
            double vy = (run.to().y() - run.from().y()) / run.length();
            double along = (q.x() - run.from().x()) * vx + (q.y() - run.from().y()) * vy;
            double off =
                    Math.abs((q.x() - run.from().x()) * vy - (q.y() - run.from().y()) * vx);
            boolean parallel = Math.abs(ux * vy - uy * vx) < 0.1;
            if (parallel && off <= NEAR * spacing && along >= -spacing / 2 && along <= run.length() + spacing / 2) {
                return other.warmth(Math.max(0, Math.min(run.length(), along)));
            }
        }
        return Double.NaN;
    }
}
