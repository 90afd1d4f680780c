package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.Distance.Arc;

/** Pipe that lies already, as chords of two degrees, and how near other pipe comes to it, mm. */
public final class Strand {
    private static final double STEP = 2;

    /** Beyond all rounding of these distances, mm. */
    private static final double ROUNDING = 1e-6;

    /** Each chord: ax, ay, bx, by. */
    private final List<double[]> chords = new ArrayList<>();
    /** How far an arc may bulge out of its chords, mm. */
    private double slack;

    private double left = Double.POSITIVE_INFINITY;
    private double low = Double.POSITIVE_INFINITY;
    private double right = Double.NEGATIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    /** A strand of pipe. */
    public Strand(List<Element> elements) {
        elements.forEach(this::add);
    }

    private void add(Element e) {
        double x = e.from().x();
        double y = e.from().y();
        if (e instanceof Element.Bend bend) {
            int steps = (int) Math.max(1, Math.ceil(Math.abs(bend.turn()) / STEP));
            double start = Math.atan2(y - bend.centre().y(), x - bend.centre().x());
            for (int i = 1; i <= steps; i++) {
                double angle = start + Math.toRadians(bend.turn()) * i / steps;
                double nextX = bend.centre().x() + bend.radius() * Math.cos(angle);
                double nextY = bend.centre().y() + bend.radius() * Math.sin(angle);
                chord(x, y, nextX, nextY);
                x = nextX;
                y = nextY;
            }
            slack = Math.max(slack, bend.radius() * (1 - Math.cos(Math.toRadians(STEP / 2))));
        } else {
            chord(x, y, e.to().x(), e.to().y());
        }
    }

    private void chord(double ax, double ay, double bx, double by) {
        chords.add(new double[] {ax, ay, bx, by});
        left = Math.min(left, Math.min(ax, bx));
        low = Math.min(low, Math.min(ay, by));
        right = Math.max(right, Math.max(ax, bx));
        high = Math.max(high, Math.max(ay, by));
    }

    /** Whether the rectangle round all chords is so far from another that nothing in them can be nearer than a distance, mm. */
    private boolean isFar(double otherLeft, double otherLow, double otherRight, double otherHigh, double apart) {
        double dx = Math.max(0, Math.max(otherLeft - right, left - otherRight));
        double dy = Math.max(0, Math.max(otherLow - high, low - otherHigh));
        double reach = apart + slack + ROUNDING;
        return dx * dx + dy * dy > reach * reach;
    }

    /** Whether a point or a straight segment comes nearer than a distance, mm. */
    boolean isNear(double ax, double ay, double bx, double by, double apart) {
        return !isFar(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by), apart)
                && distance(ax, ay, bx, by) < apart;
    }

    /** Whether an arc comes nearer than a distance, mm. */
    boolean isNear(Arc arc, double apart) {
        double r = arc.radius();
        return !isFar(arc.cx() - r, arc.cy() - r, arc.cx() + r, arc.cy() + r, apart) && distance(arc) < apart;
    }

    /** Whether other pipe comes nearer than a distance, mm. */
    public boolean isNear(Strand other, double apart) {
        double reach = apart + other.slack;
        if (isFar(other.left, other.low, other.right, other.high, reach)) {
            return false;
        }
        for (double[] c : other.chords) {
            if (isNear(c[0], c[1], c[2], c[3], reach)) {
                return true;
            }
        }
        return false;
    }

    /** Least distance from a point or a straight segment. */
    private double distance(double ax, double ay, double bx, double by) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] c : chords) {
            least = Math.min(
                    least,
                    ax == bx && ay == by
                            ? Distance.pointSegment(ax, ay, c[0], c[1], c[2], c[3])
                            : Distance.segmentSegment(ax, ay, bx, by, c[0], c[1], c[2], c[3]));
        }
        return least - slack;
    }

    /** Least distance from an arc. */
    private double distance(Arc arc) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] c : chords) {
            least = Math.min(least, Distance.segmentArc(c[0], c[1], c[2], c[3], arc));
        }
        return least - slack;
    }
}
