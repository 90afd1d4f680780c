package org.runbend.export.outline;

import java.util.Optional;
import org.runbend.export.dxf.read.DrawingUnit;

/**
 * What a person says about a drawing.
 *
 * @param unit unit of its numbers, in place of the header's
 * @param layer the layer of the outline
 * @param tolerance widest gap that is closed between ends of lines, mm
 */
public record OutlineWish(Optional<DrawingUnit> unit, Optional<String> layer, double tolerance) {
    /** Wider gaps are no gaps any more, mm. */
    public static final double MOST_TOLERANCE = 100;

    /** Checks the tolerance. */
    public OutlineWish {
        if (!(tolerance >= 0 && tolerance <= MOST_TOLERANCE)) {
            throw new IllegalArgumentException("tolerance (" + tolerance + " mm) must be from 0 to " + MOST_TOLERANCE);
        }
    }
}
