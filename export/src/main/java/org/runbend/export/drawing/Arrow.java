package org.runbend.export.drawing;

import java.io.IOException;
import java.util.List;

/** A filled arrow head: its tip, where it points to (degrees), its length in mm. A third as wide as long. */
public record Arrow(Point tip, double angle, double length) implements Shape {
    /** Checks the length. */
    public Arrow {
        if (!(length > 0) || !Double.isFinite(angle)) {
            throw new IllegalArgumentException("arrow length (" + length + " mm) must be over 0");
        }
    }

    /** Tip and the two corners behind, anticlockwise. */
    public List<Point> corners() {
        Point back = tip.polar(-length, angle);
        return List.of(tip, back.polar(length / 6, angle + 90), back.polar(length / 6, angle - 90));
    }

    @Override
    public Extent extent() {
        return Extent.around(corners());
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.arrow(layer, this);
    }
}
