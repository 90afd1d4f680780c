package org.runbend.export.drawing;

import java.io.IOException;
import java.util.List;

/**
 * What a drawing format must be able to do. Coordinates in mm, y up; a backend that needs y down turns it itself. Layers
 * come in their order, never back and forth.
 */
public interface Backend {
    /** Called first. */
    void begin(String title, Extent extent) throws IOException;

    /** What programs are told of the shape that comes next; most formats have no place for it. */
    default void notes(List<String> notes) throws IOException {}

    /** A straight line. */
    void segment(Layer layer, Segment segment) throws IOException;

    /** A true arc, or the best the format has. */
    void arc(Layer layer, Arc arc) throws IOException;

    /** A whole circle. */
    void circle(Layer layer, Circle circle) throws IOException;

    /** Lines and arcs in one piece. */
    void path(Layer layer, Path path) throws IOException;

    /** A filled arrow head. */
    void arrow(Layer layer, Arrow arrow) throws IOException;

    /** One line of letters. */
    void text(Layer layer, Text text) throws IOException;

    /** Lines of letters; by default one by one. */
    default void paragraph(Layer layer, Paragraph paragraph) throws IOException {
        for (Text line : paragraph.texts()) {
            text(layer, line);
        }
    }

    /** A dimension; by default its parts. */
    default void dimension(Layer layer, Dimension dimension) throws IOException {
        for (Shape part : dimension.parts()) {
            part.drawOn(this, layer);
        }
    }

    /** Called last. */
    void end() throws IOException;

    /** In which order layers are drawn: that of painting, if a format has no better. */
    default List<Layer> order() {
        return List.of(Layer.values());
    }
}
