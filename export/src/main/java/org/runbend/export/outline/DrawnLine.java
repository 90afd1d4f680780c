package org.runbend.export.outline;

import java.util.List;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;

/**
 * An open line of a drawing, lines and arcs one after the other.
 *
 * @param vertices mm, the last one's bulge 0
 * @param unit the unit the drawing was read in
 * @param remarks what a person should look at, one sentence each
 */
public record DrawnLine(List<Vertex> vertices, DrawingUnit unit, List<String> remarks) {
    /** Copies. */
    public DrawnLine {
        vertices = List.copyOf(vertices);
        remarks = List.copyOf(remarks);
    }
}
