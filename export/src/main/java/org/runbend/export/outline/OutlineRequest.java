package org.runbend.export.outline;

import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.export.drawing.Point;
import org.runbend.export.dxf.read.DrawingUnit;

/**
 * What a person says about a drawing.
 *
 * @param unit unit of its numbers, in place of the header's
 * @param layer the layer of the outline
 * @param tolerance widest gap that is closed between ends of lines, mm
 * @param contour number of the closed line that is the floor, as a message or a picture numbers them, from 1
 * @param at a place on the floor, mm as the drawing counts
 * @param unheated layer of lines and hatches that are unheated floor
 */
public record OutlineRequest(
        Optional<DrawingUnit> unit,
        Optional<String> layer,
        double tolerance,
        OptionalInt contour,
        Optional<Point> at,
        Optional<String> unheated) {
    /** Wider gaps are no gaps any more, mm. */
    public static final double MOST_TOLERANCE = 100;

    /** Checks the tolerance. */
    public OutlineRequest {
        if (!(tolerance >= 0 && tolerance <= MOST_TOLERANCE)) {
            throw new IllegalArgumentException("tolerance (" + tolerance + " mm) must be from 0 to " + MOST_TOLERANCE);
        }
    }

    /** A request that names no closed line and no unheated floor. */
    public OutlineRequest(Optional<DrawingUnit> unit, Optional<String> layer, double tolerance) {
        this(unit, layer, tolerance, OptionalInt.empty(), Optional.empty(), Optional.empty());
    }

    /** Whether a layer is that of unheated floor. */
    boolean isUnheated(String name) {
        return name.equalsIgnoreCase("UNHEATED")
                || unheated.filter(name::equalsIgnoreCase).isPresent();
    }
}
