package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.Distance.Arc;

/** Pipe that lies already, as chords of two degrees, and how near other pipe comes to it, mm. */
public final class Strand {
    private static final double STEP = 2;

    /** Each chord: ax, ay, bx, by. */
    private final List<double[]> chords = new ArrayList<>();
    /** How far an arc may bulge out of its chords, mm. */
    private double slack;

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
                chords.add(new double[] {x, y, nextX, nextY});
                x = nextX;
                y = nextY;
            }
            slack = Math.max(slack, bend.radius() * (1 - Math.cos(Math.toRadians(STEP / 2))));
        } else {
            chords.add(new double[] {x, y, e.to().x(), e.to().y()});
        }
    }

    /** Least distance from a point or a straight segment. */
    double distance(double ax, double ay, double bx, double by) {
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
    double distance(Arc arc) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] c : chords) {
            least = Math.min(least, Distance.segmentArc(c[0], c[1], c[2], c[3], arc));
        }
        return least - slack;
    }

    /** Least distance from other pipe. */
    public double distance(Strand other) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] c : other.chords) {
            least = Math.min(least, distance(c[0], c[1], c[2], c[3]));
        }
        return least - other.slack;
    }
}
