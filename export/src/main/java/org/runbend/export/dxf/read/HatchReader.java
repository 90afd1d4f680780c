package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The edges of a hatch (group codes of the DXF reference, HATCH): polylines with bulges, or lines, arcs, parts of ellipses
 * and splines one after the other. Counts only part what stands there, nothing is made room for by them.
 */
final class HatchReader {
    private static final int EDGES = 91;
    private static final int PATH = 92;
    private static final int END_OF_PATH = 97;
    private static final int POLYLINE = 2;
    private static final int MOST_DEGREE = 20;

    private final EntityTags t;
    private final Raw.Head head;
    private final Placement plane;
    private final double z;
    private final List<List<Raw>> edges = new ArrayList<>();
    private int at;

    private HatchReader(EntityTags t) {
        this.t = t;
        head = RawReader.head(t);
        plane = t.plane();
        z = t.get(30, 0);
    }

    /** The area that a hatch fills; something not understood if it has no edge. */
    static Raw read(EntityTags t) {
        for (int i = 0; i < t.size(); i++) {
            if (Double.isNaN(t.value(i))) {
                return RawReader.other(t, "");
            }
        }
        HatchReader reader = new HatchReader(t);
        reader.paths();
        return reader.edges.isEmpty() ? RawReader.other(t, "") : new Raw.Area(reader.head, reader.edges);
    }

    private void paths() {
        while (at < t.size() && t.code(at) != EDGES) {
            at++;
        }
        while (at < t.size() && t.code(at) != 75 && t.code(at) != 98) {
            if (t.code(at) == PATH) {
                boolean polyline = (((int) t.value(at)) & POLYLINE) != 0;
                at++;
                List<Raw> edge = polyline ? polyline() : parts();
                if (!edge.isEmpty()) {
                    edges.add(edge);
                }
            } else {
                at++;
            }
        }
    }

    /** Whether the pair looked at belongs to the same path. */
    private boolean inPath() {
        return at < t.size() && t.code(at) != PATH && t.code(at) != END_OF_PATH && t.code(at) != 75;
    }

    private List<Raw> polyline() {
        double[] triples = new double[3 * (t.size() - at)];
        int n = 0;
        while (inPath()) {
            int code = t.code(at);
            if (code == 10) {
                triples[3 * n++] = t.value(at);
            } else if (code == 20 && n > 0) {
                triples[3 * n - 2] = t.value(at);
            } else if (code == 42 && n > 0) {
                triples[3 * n - 1] = t.value(at);
            }
            at++;
        }
        return n < 2
                ? List.of()
                : List.of(new Raw.Poly(head, plane, z, new Reals(Arrays.copyOf(triples, 3 * n)), true, false));
    }

    private List<Raw> parts() {
        List<Raw> parts = new ArrayList<>();
        while (inPath()) {
            if (t.code(at) == 72) {
                int kind = (int) t.value(at);
                at++;
                int from = at;
                while (inPath() && t.code(at) != 72) {
                    at++;
                }
                part(kind, from, at, parts);
            } else {
                at++;
            }
        }
        return parts;
    }

    private void part(int kind, int from, int to, List<Raw> into) {
        double x = value(10, from, to);
        double y = value(20, from, to);
        double u = value(11, from, to);
        double v = value(21, from, to);
        if (kind == 1 && !Double.isNaN(x + y + u + v)) {
            double[] triples = {x, y, 0, u, v, 0};
            into.add(new Raw.Poly(head, plane, z, new Reals(triples), false, false));
        } else if (kind == 2 || kind == 3) {
            round(kind, from, to, into);
        } else if (kind == 4) {
            spline(from, to, into);
        }
    }

    /** Angles of parts that run clockwise are counted clockwise (group 73 is 0 there). */
    private void round(int kind, int from, int to, List<Raw> into) {
        double x = value(10, from, to);
        double y = value(20, from, to);
        double size = value(40, from, to);
        double a = value(50, from, to);
        double b = value(51, from, to);
        if (Double.isNaN(x + y + size + a + b) || !(size > 0)) {
            return;
        }
        boolean left = !(value(73, from, to) == 0);
        double start = left ? a : 360 - b;
        double sweep = (b - a) % 360;
        sweep = sweep > 1e-9 ? sweep : sweep + 360;
        if (kind == 2) {
            into.add(new Raw.Round(head, plane, x, y, z, size, start, sweep));
            return;
        }
        double ux = value(11, from, to);
        double uy = value(21, from, to);
        if (plane == Placement.IDENTITY && !Double.isNaN(ux + uy) && (ux != 0 || uy != 0)) {
            into.add(new Raw.Oval(
                    head,
                    new Reals(x, y, z),
                    new Reals(ux, uy, 0),
                    new Reals(-size * uy, size * ux, 0),
                    Math.toRadians(start),
                    Math.toRadians(sweep)));
        }
    }

    private void spline(int from, int to, List<Raw> into) {
        double[] knots = all(40, from, to);
        double[] xs = all(10, from, to);
        double[] ys = all(20, from, to);
        double[] weights = all(42, from, to);
        double degree = value(94, from, to);
        int n = xs.length;
        boolean sound = plane == Placement.IDENTITY
                && degree >= 1
                && degree <= MOST_DEGREE
                && ys.length == n
                && n > degree
                && knots.length == n + degree + 1
                && (weights.length == 0 || weights.length == n)
                && RawReader.isRising(knots)
                && Arrays.stream(weights).allMatch(w -> w > 0);
        if (!sound) {
            return;
        }
        double[] triples = new double[3 * n];
        for (int i = 0; i < n; i++) {
            triples[3 * i] = xs[i];
            triples[3 * i + 1] = ys[i];
        }
        into.add(new Raw.Spline(head, (int) degree, new Reals(knots), new Reals(weights), new Reals(triples), false));
    }

    private double value(int code, int from, int to) {
        for (int i = from; i < to; i++) {
            if (t.code(i) == code) {
                return t.value(i);
            }
        }
        return Double.NaN;
    }

    private double[] all(int code, int from, int to) {
        double[] found = new double[to - from];
        int n = 0;
        for (int i = from; i < to; i++) {
            if (t.code(i) == code) {
                found[n++] = t.value(i);
            }
        }
        return Arrays.copyOf(found, n);
    }
}
