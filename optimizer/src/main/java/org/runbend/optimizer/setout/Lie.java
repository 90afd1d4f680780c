package org.runbend.optimizer.setout;

import org.runbend.optimizer.job.Point;

/** How a straight lies to the two lines. */
public enum Lie {
    /** Parallel to the base line. */
    ALONG,
    /** Parallel to the square line. */
    ACROSS,
    /** Neither. */
    ASLANT;

    /** A tape cannot tell less, mm. */
    static final double SAME = 0.02;

    /** Of the straight between two places in a frame. */
    static Lie of(Point a, Point b) {
        if (Math.abs(a.y() - b.y()) < SAME) {
            return ALONG;
        }
        return Math.abs(a.x() - b.x()) < SAME ? ACROSS : ASLANT;
    }

    /** What places on such a straight share: their distance from the line it is parallel to, mm. */
    double offset(Point p) {
        return this == ALONG ? p.y() : p.x();
    }

    /** Where a place lies along such a straight, mm. */
    public double stop(Point p) {
        return this == ALONG ? p.x() : p.y();
    }
}
