package org.runbend.export.drawing;

import java.util.ArrayList;
import java.util.List;

/** Builds a {@link Path} from where the pen stands. Not for reuse after {@link #open} or {@link #close}. */
public final class PathBuilder {
    private final List<Vertex> vertices = new ArrayList<>();
    private Point last;

    PathBuilder(Point start) {
        last = start;
    }

    /** A straight line to p. */
    public PathBuilder lineTo(Point p) {
        vertices.add(Vertex.straight(last));
        last = p;
        return this;
    }

    /** An arc to p that turns by {@code sweep} degrees (anticlockwise positive, |sweep| &lt; 360). */
    public PathBuilder arcTo(Point p, double sweep) {
        if (!(Math.abs(sweep) < 360)) {
            throw new IllegalArgumentException("arc sweep (" + sweep + " degrees) must be under 360 either way");
        }
        vertices.add(new Vertex(last.x(), last.y(), StrictMath.tan(Math.toRadians(sweep) / 4)));
        last = p;
        return this;
    }

    /** The open path that ends here. */
    public Path open() {
        vertices.add(Vertex.straight(last));
        return new Path(vertices, false);
    }

    /** The path closed by a straight line, or closed as it is when the pen is back at the start. */
    public Path close() {
        vertices.add(Vertex.straight(last));
        return new Path(vertices, true);
    }
}
