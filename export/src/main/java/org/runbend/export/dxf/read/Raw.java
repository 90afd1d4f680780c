package org.runbend.export.dxf.read;

import java.util.List;

/** An entity as it stands in the file, before it is placed. Numbers are in its own plane, or the world's where none is named. */
sealed interface Raw {
    Head head();

    /** What every entity has. */
    record Head(String type, String layer, int place, List<String> notes) {}

    /** A line in the world. */
    record Line(Head head, double x1, double y1, double z1, double x2, double y2, double z2) implements Raw {}

    /** A circle or an arc of it, degrees. */
    record Round(Head head, Placement plane, double x, double y, double z, double radius, double start, double sweep)
            implements Raw {
        boolean isWhole() {
            return sweep == 360;
        }
    }

    /** An ellipse about (x, y, z) in the world with half axes u and v; parameters in radians. */
    record Oval(Head head, Reals centre, Reals u, Reals v, double start, double sweep) implements Raw {}

    /** Vertices: x, y, bulge one after the other in a plane at height z, or x, y, z in the world if {@code solid}. */
    record Poly(Head head, Placement plane, double z, Reals triples, boolean closed, boolean solid) implements Raw {
        int count() {
            return triples.size() / 3;
        }
    }

    /** A rational B-spline in the world: x, y, z one after the other. */
    record Spline(Head head, int degree, Reals knots, Reals weights, Reals triples, boolean closed) implements Raw {}

    /** A smooth curve through points of the world: x, y, z one after the other; a tangent of no numbers is none. */
    record Through(Head head, Reals triples, Reals startTangent, Reals endTangent, boolean closed) implements Raw {}

    /** A point in the world. */
    record Spot(Head head, double x, double y, double z) implements Raw {}

    /** Words. */
    record Words(
            Head head,
            Placement plane,
            double x,
            double y,
            double z,
            double height,
            double angle,
            int column,
            int row,
            String content)
            implements Raw {}

    /** A block put in, {@code columns} by {@code rows} times. */
    record Insert(Head head, String block, Placement place, double angle, int columns, int rows, double dx, double dy)
            implements Raw {}

    /** A hatched area: its edges, each closed, as entities of its plane. */
    record Area(Head head, List<List<Raw>> edges) implements Raw {}

    /** Something not understood; {@code type} of the head says what and why. */
    record Other(Head head) implements Raw {}
}
