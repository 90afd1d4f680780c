package org.runbend.export.drawing;

import java.io.IOException;

/** Something that can be drawn. Coordinates in mm, y up; angles in degrees, anticlockwise. Immutable. */
public sealed interface Shape permits Segment, Arc, Circle, Path, Arrow, Text, Paragraph, Dimension {
    /** The box around the shape; for letters a fair guess, as each program has its own font. */
    Extent extent();

    /** Hands the shape to the method of the backend that is meant for it. */
    void drawOn(Backend backend, Layer layer) throws IOException;
}
