package org.runbend.export.outline;

import java.util.List;
import org.runbend.export.drawing.Point;

/**
 * What a drawing was understood to show, mm.
 *
 * @param drawing name of the drawing
 * @param form version and unit, for people
 * @param outline the edge of the floor, anticlockwise from its lowest corner
 * @param obstacles keep-outs
 * @param unheated closed lines of the layer UNHEATED
 * @param marks words beside the outline
 * @param remarks words elsewhere on the floor
 * @param guesses what was concluded about the outline, one sentence each
 * @param leftOut what was not understood or not taken, one line each
 */
public record FloorSketch(
        String drawing,
        String form,
        Contour outline,
        List<Obstacle> obstacles,
        List<Obstacle> unheated,
        List<Mark> marks,
        List<Remark> remarks,
        List<String> guesses,
        List<String> leftOut) {
    /** Copies. */
    public FloorSketch {
        obstacles = List.copyOf(obstacles);
        unheated = List.copyOf(unheated);
        marks = List.copyOf(marks);
        remarks = List.copyOf(remarks);
        guesses = List.copyOf(guesses);
        leftOut = List.copyOf(leftOut);
    }

    /** Words at a place. */
    public record Remark(Point at, String text) {}

    /** Words beside a side of the outline; {@code edge} counts the entries of the outline. */
    public record Mark(int edge, Point at, String text) {}
}
