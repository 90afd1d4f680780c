package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.dxf.DxfVertex;

/** Length of and points on what was read, worked out apart from the reader: arcs by their angles in 2000 steps. */
final class Measure {
    private static final int STEPS = 2000;

    private Measure() {}

    /** x, y of points in order; empty for what has no length. */
    static List<double[]> points(DxfEntity e) {
        if (e instanceof DxfEntity.Line l) {
            return List.of(new double[] {l.x1(), l.y1()}, new double[] {l.x2(), l.y2()});
        }
        if (e instanceof DxfEntity.Arc a) {
            return round(a.x(), a.y(), a.radius(), a.start(), a.sweep());
        }
        if (e instanceof DxfEntity.Circle c) {
            return round(c.x(), c.y(), c.radius(), 0, 360);
        }
        if (e instanceof DxfEntity.Polyline p) {
            return vertices(p.vertices(), p.closed());
        }
        return e instanceof DxfEntity.Curve c ? vertices(c.chords(), c.closed()) : List.of();
    }

    static double length(DxfEntity e) {
        List<double[]> p = points(e);
        double sum = 0;
        for (int i = 1; i < p.size(); i++) {
            sum += Math.hypot(p.get(i)[0] - p.get(i - 1)[0], p.get(i)[1] - p.get(i - 1)[1]);
        }
        return sum;
    }

    private static List<double[]> round(double x, double y, double r, double start, double sweep) {
        List<double[]> out = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double t = Math.toRadians(start + sweep * i / STEPS);
            out.add(new double[] {x + r * Math.cos(t), y + r * Math.sin(t)});
        }
        return out;
    }

    private static List<double[]> vertices(List<DxfVertex> v, boolean closed) {
        List<double[]> out = new ArrayList<>();
        int n = v.size();
        for (int i = 0; i < (closed ? n : n - 1); i++) {
            DxfVertex a = v.get(i);
            DxfVertex b = v.get((i + 1) % n);
            out.add(new double[] {a.x(), a.y()});
            if (a.bulge() != 0) {
                out.addAll(bulge(a, b));
            }
            out.add(new double[] {b.x(), b.y()});
        }
        return out;
    }

    /** By the inscribed angle: the arc turns by 4 atan(bulge) and leaves the chord by half of that. */
    private static List<double[]> bulge(DxfVertex a, DxfVertex b) {
        double sweep = 4 * Math.atan(a.bulge());
        double chord = Math.hypot(b.x() - a.x(), b.y() - a.y());
        double r = chord / 2 / Math.sin(Math.abs(sweep) / 2);
        double heading = Math.atan2(b.y() - a.y(), b.x() - a.x()) - sweep / 2;
        double side = heading + Math.signum(sweep) * Math.PI / 2;
        double cx = a.x() + r * Math.cos(side);
        double cy = a.y() + r * Math.sin(side);
        return round(cx, cy, r, Math.toDegrees(side + Math.PI), Math.toDegrees(sweep));
    }
}
