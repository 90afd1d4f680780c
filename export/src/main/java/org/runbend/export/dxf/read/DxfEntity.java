package org.runbend.export.dxf.read;

import java.util.List;
import org.runbend.export.dxf.DxfVertex;

/**
 * Something drawn, seen from above: drawing units, y up, angles in degrees, anticlockwise. {@code layer} is spelled as in
 * the table of layers.
 */
public sealed interface DxfEntity {
    /** The layer it is on. */
    String layer();

    /** A straight line. */
    record Line(String layer, double x1, double y1, double x2, double y2) implements DxfEntity {}

    /** An arc, anticlockwise from {@code start} by {@code sweep} degrees, over 0 and under 360. */
    record Arc(String layer, double x, double y, double radius, double start, double sweep) implements DxfEntity {}

    /** A whole circle. */
    record Circle(String layer, double x, double y, double radius) implements DxfEntity {}

    /** Lines and arcs one after the other; a closed one leads back to its first vertex. */
    record Polyline(String layer, List<DxfVertex> vertices, boolean closed) implements DxfEntity {
        /** Copies. */
        public Polyline {
            vertices = List.copyOf(vertices);
        }
    }

    /** A curve that is no arc, as chords; {@code kind} is the type it had: ELLIPSE, SPLINE or one squeezed by a block. */
    record Curve(String layer, String kind, List<DxfVertex> chords, boolean closed) implements DxfEntity {
        /** Copies. */
        public Curve {
            chords = List.copyOf(chords);
        }
    }

    /** A hatched area: the edges it has, each closed. */
    record Area(String layer, List<List<DxfEntity>> edges) implements DxfEntity {
        /** Copies. */
        public Area {
            edges = edges.stream().map(List::copyOf).toList();
        }
    }

    /** A point. */
    record Spot(String layer, double x, double y) implements DxfEntity {}

    /**
     * Words. (x, y) is the place named by {@code column} (0 left, 1 middle, 2 right) and {@code row} (0 bottom, 1 middle,
     * 2 top); lines of the content are parted by line feeds.
     */
    record Text(String layer, double x, double y, double height, double angle, int column, int row, String content)
            implements DxfEntity {}
}
