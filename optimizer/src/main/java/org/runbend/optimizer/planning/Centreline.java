package org.runbend.optimizer.planning;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** A loop's centreline as points; arcs become chords of 5 degrees. */
final class Centreline {
    private static final double CHORD = 5;

    private Centreline() {}

    /** Every point once, lead-ins included. */
    static List<Point> of(Breakdown loop) {
        return loop.chords(CHORD);
    }

    /** The same, with chords of so many degrees at most. */
    static List<Point> of(Breakdown loop, double chord) {
        return loop.chords(chord);
    }

    /** The points of an element after its first. */
    static List<Point> onwards(Element element) {
        return element.onwards(CHORD);
    }
}
