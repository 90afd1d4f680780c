package org.runbend.export.drawing;

import java.util.List;
import java.util.Objects;

/**
 * A shape on its layer.
 *
 * @param layer what it is there for
 * @param shape what is seen
 * @param notes what programs are told of it, one {@code key=value} each; people see none of it
 */
public record Mark(Layer layer, Shape shape, List<String> notes) {
    /** Layer and shape are needed. */
    public Mark {
        notes = List.copyOf(notes);
        Objects.requireNonNull(layer, "layer");
        Objects.requireNonNull(shape, "shape");
    }

    /** A mark of which there is nothing more to tell. */
    public Mark(Layer layer, Shape shape) {
        this(layer, shape, List.of());
    }
}
