package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A floor as a generator thinks of it, mm.
 *
 * @param corners once round, anticlockwise or clockwise
 * @param through for sides that are arcs a point on the arc, by the number of the corner where the side begins
 */
record FloorSketch(List<double[]> corners, Map<Integer, double[]> through) {
    FloorSketch {
        corners = List.copyOf(corners);
        through = new TreeMap<>(through);
    }

    static FloorSketch straight(List<double[]> corners) {
        return new FloorSketch(corners, Map.of());
    }

    double low(int axis) {
        return corners.stream().mapToDouble(c -> c[axis]).min().orElseThrow();
    }

    double high(int axis) {
        return corners.stream().mapToDouble(c -> c[axis]).max().orElseThrow();
    }

    /** Turned by degrees about the origin and moved, rounded to tenths. */
    FloorSketch placed(double degrees, double dx, double dy) {
        Map<Integer, double[]> moved = new TreeMap<>();
        through.forEach((i, p) -> moved.put(i, placed(p, degrees, dx, dy)));
        return new FloorSketch(
                corners.stream().map(c -> placed(c, degrees, dx, dy)).toList(), moved);
    }

    private static double[] placed(double[] p, double degrees, double dx, double dy) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new double[] {tenth(c * p[0] - s * p[1] + dx), tenth(s * p[0] + c * p[1] + dy)};
    }

    static double tenth(double value) {
        return Math.rint(value * 10) / 10 + 0.0;
    }

    /** The outline with fine chords (a degree each) in place of arcs. */
    List<double[]> ring() {
        List<double[]> ring = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            ring.add(corners.get(i));
            if (through.containsKey(i)) {
                ring.addAll(arc(corners.get(i), through.get(i), corners.get((i + 1) % corners.size())));
            }
        }
        return ring;
    }

    /** Points of the arc from a by b to c between its ends; the centre is where the bisectors of ab and bc meet. */
    private static List<double[]> arc(double[] a, double[] b, double[] c) {
        double d = 2 * (a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1]));
        double aa = a[0] * a[0] + a[1] * a[1];
        double bb = b[0] * b[0] + b[1] * b[1];
        double cc = c[0] * c[0] + c[1] * c[1];
        double x = (aa * (b[1] - c[1]) + bb * (c[1] - a[1]) + cc * (a[1] - b[1])) / d;
        double y = (aa * (c[0] - b[0]) + bb * (a[0] - c[0]) + cc * (b[0] - a[0])) / d;
        double radius = Math.hypot(a[0] - x, a[1] - y);
        double from = Math.atan2(a[1] - y, a[0] - x);
        boolean left = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
        double sweep = Math.atan2(c[1] - y, c[0] - x) - from;
        sweep += left && sweep < 0 ? 2 * Math.PI : !left && sweep > 0 ? -2 * Math.PI : 0;
        int steps = (int) Math.ceil(Math.abs(Math.toDegrees(sweep)));
        List<double[]> points = new ArrayList<>();
        for (int i = 1; i < steps; i++) {
            double at = from + sweep * i / steps;
            points.add(new double[] {x + radius * Math.cos(at), y + radius * Math.sin(at)});
        }
        return points;
    }
}
