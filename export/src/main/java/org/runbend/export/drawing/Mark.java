package org.runbend.export.drawing;

import java.util.Objects;

/** A shape on its layer. */
public record Mark(Layer layer, Shape shape) {
    /** Both are needed. */
    public Mark {
        Objects.requireNonNull(layer, "layer");
        Objects.requireNonNull(shape, "shape");
    }
}
