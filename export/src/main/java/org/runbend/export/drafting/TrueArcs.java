package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.ArcFitting;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * Gives back the arcs that a job was written with. A job holds them as chords within half a millimetre whose ends lie on the
 * arc to a thousandth; so an arc of three or more chords comes back exactly, and one of fewer is half a millimetre off at most.
 */
final class TrueArcs {
    private static final ArcFitting.Limits CHORDS = new ArcFitting.Limits(0.003, 0.56, 52, 3, 1, 4.9);

    private TrueArcs() {}

    /** A closed line through corners, arcs where the corners are ends of chords of one. */
    static Path of(List<Point> corners) {
        List<Vertex> straight = corners.stream().map(Vertex::straight).toList();
        return new Path(ArcFitting.fit(straight, true, CHORDS).vertices(), true);
    }
}
