package org.runbend.export.drawing;

import java.io.IOException;

/** A whole circle; radius over 0 mm. Holes are circles, never two arcs. */
public record Circle(Point centre, double radius) implements Shape {
    /** Checks the radius. */
    public Circle {
        if (!(radius > 0) || !Double.isFinite(radius)) {
            throw new IllegalArgumentException("circle radius (" + radius + " mm) must be over 0");
        }
    }

    @Override
    public Extent extent() {
        return Extent.at(centre).grow(radius);
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.circle(layer, this);
    }
}
