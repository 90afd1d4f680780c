package org.runbend.export.dxf;

import java.util.ArrayList;
import java.util.List;

/** Vertices made ready for the file: no two alike in text, no arc over a half circle. */
final class Polyline {
    private Polyline() {}

    /** Splits arcs over 180 degrees in the middle, then drops vertices that would be written like the next one. */
    static List<DxfVertex> ready(List<DxfVertex> vertices, boolean closed) {
        return distinct(halved(vertices, closed), closed);
    }

    private static List<DxfVertex> halved(List<DxfVertex> vertices, boolean closed) {
        List<DxfVertex> out = new ArrayList<>();
        for (int i = 0; i < vertices.size(); i++) {
            DxfVertex a = vertices.get(i);
            boolean last = i == vertices.size() - 1;
            if (last && !closed) {
                out.add(new DxfVertex(a.x(), a.y(), 0));
            } else if (Math.abs(a.bulge()) <= 1 + 1e-9) {
                out.add(new DxfVertex(a.x(), a.y(), Math.max(-1, Math.min(1, a.bulge()))));
            } else {
                DxfVertex b = vertices.get((i + 1) % vertices.size());
                double half = StrictMath.tan(StrictMath.atan(a.bulge()) / 2);
                out.add(new DxfVertex(a.x(), a.y(), half));
                out.add(middle(a, b, half));
            }
        }
        return out;
    }

    /** The middle of an arc: its sagitta is bulge x chord / 2, to the right of the chord when anticlockwise. */
    private static DxfVertex middle(DxfVertex a, DxfVertex b, double half) {
        double x = (a.x() + b.x()) / 2 + (b.y() - a.y()) * a.bulge() / 2;
        double y = (a.y() + b.y()) / 2 - (b.x() - a.x()) * a.bulge() / 2;
        return new DxfVertex(x, y, half);
    }

    private static List<DxfVertex> distinct(List<DxfVertex> vertices, boolean closed) {
        List<DxfVertex> out = new ArrayList<>();
        for (DxfVertex v : vertices) {
            if (!out.isEmpty() && alike(out.get(out.size() - 1), v)) {
                out.remove(out.size() - 1);
            }
            out.add(v);
        }
        if (closed && out.size() > 1 && alike(out.get(out.size() - 1), out.get(0))) {
            out.remove(out.size() - 1);
        }
        return out;
    }

    private static boolean alike(DxfVertex a, DxfVertex b) {
        return Tags.coordinate(a.x()).equals(Tags.coordinate(b.x()))
                && Tags.coordinate(a.y()).equals(Tags.coordinate(b.y()));
    }
}
