package org.runbend.export.outline;

import java.util.Locale;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * A closed line that could be a floor.
 *
 * @param number from 1, largest first, as a person names it
 * @param contour the line
 * @param what what it was taken for, such as a frame; empty if nothing speaks against a floor
 */
public record Candidate(int number, Contour contour, String what) {
    /** How a person takes it, and what it is. */
    String words() {
        return "--contour " + number + ": " + FloorReading.metres(contour)
                + (contour.area() < contour.weight() ? " (crosses itself)" : "") + " on layer "
                + FloorReading.shown(contour.layer()) + " at " + FloorReading.shown(corner())
                + (what.isEmpty() ? "" : ", " + what.toLowerCase(Locale.ROOT));
    }

    /** Its corner to the lower left. */
    Point corner() {
        return contour.path().vertices().stream()
                .map(Vertex::point)
                .min((a, b) -> Double.compare(a.x() + a.y(), b.x() + b.y()))
                .orElseThrow();
    }
}
