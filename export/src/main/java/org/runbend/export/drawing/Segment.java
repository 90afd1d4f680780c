package org.runbend.export.drawing;

import java.io.IOException;
import java.util.List;

/** A straight line between two different points. */
public record Segment(Point a, Point b) implements Shape {
    /** Refuses a line of no length. */
    public Segment {
        if (a.equals(b)) {
            throw new IllegalArgumentException("segment at " + a + " has no length");
        }
    }

    @Override
    public Extent extent() {
        return Extent.around(List.of(a, b));
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.segment(layer, this);
    }
}
