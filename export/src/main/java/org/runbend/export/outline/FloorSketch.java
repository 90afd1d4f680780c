package org.runbend.export.outline;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
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
 * @param supports ribs and battens, of a drawing of our own
 * @param facts what a drawing of our own says of its job, by key: job, order, port, pipe and so on
 * @param candidates closed lines that could be taken instead; none where there is no choice
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
        List<Support> supports,
        SortedMap<String, String> facts,
        List<Candidate> candidates,
        List<String> guesses,
        List<String> leftOut) {
    /** Copies. */
    public FloorSketch {
        obstacles = List.copyOf(obstacles);
        unheated = List.copyOf(unheated);
        marks = List.copyOf(marks);
        remarks = List.copyOf(remarks);
        supports = List.copyOf(supports);
        facts = Collections.unmodifiableSortedMap(new TreeMap<>(facts));
        candidates = List.copyOf(candidates);
        guesses = List.copyOf(guesses);
        leftOut = List.copyOf(leftOut);
    }

    /** Words at a place. */
    public record Remark(Point at, String text) {}

    /** A rib or batten from a to b, mm wide; {@code cross} says whether pipe may cross it, as a job file does. */
    public record Support(String name, Point a, Point b, double width, String cross) {}

    /** Words beside a side of the outline; {@code edge} counts the entries of the outline, -1 for words at a point. */
    public record Mark(int edge, Point at, String text) {}
}
