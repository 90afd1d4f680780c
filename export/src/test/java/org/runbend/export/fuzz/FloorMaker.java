package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Floors of all shapes that somebody could stand on, and a few that nobody could. */
final class FloorMaker {
    private final Dice dice;

    FloorMaker(Dice dice) {
        this.dice = dice;
    }

    /** Most are tiny, as a plan of a large floor takes a thousand times as long as one of a closet. */
    FloorSketch floor() {
        int size = dice.whole(0, 9999);
        if (size < 9700) {
            return shape(dice.tenths(260, 750), dice.tenths(260, 750));
        }
        if (size < 9980) {
            return shape(dice.tenths(500, 1500), dice.tenths(400, 1200));
        }
        return size < 9998
                ? shape(dice.tenths(1000, 2200), dice.tenths(700, 1600))
                : shape(dice.tenths(2000, 5000), dice.tenths(1500, 4900));
    }

    private FloorSketch shape(double w, double h) {
        FloorSketch plain =
                switch (dice.whole(0, 15)) {
                    case 0 -> taper(w, h);
                    case 1 -> ell(w, h);
                    case 2 -> you(w, h);
                    case 3 -> arches(w, h);
                    case 4 -> star(w, h);
                    case 5 -> bow(w, h);
                    case 6 -> triangle(w, h);
                    case 7 -> round(w, h);
                    case 8 -> sliver(w);
                    case 9 -> jagged(w, h);
                    case 10 -> cross(w, h);
                    default -> FloorSketch.straight(box(w, h));
                };
        FloorSketch turned = dice.percent(12)
                ? plain.placed(dice.of(List.of(90.0, 45.0, 30.0, 180.0, dice.tenths(0, 360))), 0, 0)
                : plain;
        FloorSketch moved =
                dice.percent(15) ? turned.placed(0, dice.tenths(-5000, 5000), dice.tenths(-5000, 5000)) : turned;
        return dice.percent(10) ? mirrored(moved) : moved;
    }

    private static FloorSketch mirrored(FloorSketch floor) {
        List<double[]> corners = floor.corners().stream()
                .map(c -> new double[] {-c[0] + 0.0, c[1]})
                .toList();
        Map<Integer, double[]> through = new TreeMap<>();
        floor.through().forEach((i, p) -> through.put(i, new double[] {-p[0] + 0.0, p[1]}));
        return new FloorSketch(corners, through);
    }

    private static List<double[]> box(double w, double h) {
        return List.of(p(0, 0), p(w, 0), p(w, h), p(0, h));
    }

    private FloorSketch taper(double w, double h) {
        double cut = dice.tenths(0.05 * h, 0.6 * h);
        return FloorSketch.straight(
                dice.percent(50)
                        ? List.of(p(0, 0), p(w, 0), p(w, t(h - cut)), p(0, h))
                        : List.of(p(0, 0), p(w, t(cut / 2)), p(w, t(h - cut / 2)), p(0, h)));
    }

    private FloorSketch ell(double w, double h) {
        double x = dice.tenths(0.3 * w, 0.7 * w);
        double y = dice.tenths(0.3 * h, 0.7 * h);
        return FloorSketch.straight(List.of(p(0, 0), p(w, 0), p(w, y), p(x, y), p(x, h), p(0, h)));
    }

    private FloorSketch you(double w, double h) {
        double a = dice.tenths(0.25 * w, 0.4 * w);
        double b = dice.tenths(0.6 * w, 0.75 * w);
        double y = dice.tenths(0.2 * h, 0.7 * h);
        return FloorSketch.straight(List.of(p(0, 0), p(w, 0), p(w, h), p(b, h), p(b, y), p(a, y), p(a, h), p(0, h)));
    }

    private FloorSketch arches(double w, double h) {
        double a = dice.tenths(0.1 * w, 0.4 * w);
        double b = dice.tenths(0.5 * w, 0.9 * w);
        double y = dice.tenths(0.03 * h, 0.3 * h);
        return FloorSketch.straight(List.of(p(0, 0), p(a, 0), p(a, y), p(b, y), p(b, 0), p(w, 0), p(w, h), p(0, h)));
    }

    private FloorSketch cross(double w, double h) {
        double x = dice.tenths(0.1 * w, 0.4 * w);
        double y = dice.tenths(0.1 * h, 0.4 * h);
        return FloorSketch.straight(List.of(
                p(x, 0),
                p(t(w - x), 0),
                p(t(w - x), y),
                p(w, y),
                p(w, t(h - y)),
                p(t(w - x), t(h - y)),
                p(t(w - x), h),
                p(x, h),
                p(x, t(h - y)),
                p(0, t(h - y)),
                p(0, y),
                p(x, y)));
    }

    /** Corners at random distances round a middle: concave most of the time, never crossing. */
    private FloorSketch star(double w, double h) {
        int n = dice.whole(5, 14);
        List<double[]> corners = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double far = dice.tenths(50, 100) / 100;
            double at = 2 * Math.PI * i / n;
            corners.add(p(t(w / 2 + far * w * 0.7 * Math.cos(at)), t(h / 2 + far * h * 0.7 * Math.sin(at))));
        }
        return FloorSketch.straight(corners);
    }

    private FloorSketch bow(double w, double h) {
        double out = (dice.percent(75) ? 1 : -0.5) * dice.tenths(10, h / 2);
        boolean right = dice.percent(50);
        double[] through = p(right ? t(w + out) : t(-out), t(h / 2));
        return new FloorSketch(box(w, h), Map.of(right ? 1 : 3, through));
    }

    private FloorSketch triangle(double w, double h) {
        return FloorSketch.straight(List.of(p(0, 0), p(w, 0), p(dice.tenths(0, w), h)));
    }

    private FloorSketch round(double w, double h) {
        int n = dice.whole(6, 60);
        List<double[]> corners = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            corners.add(
                    p(t(w / 2 * (1 + Math.cos(2 * Math.PI * i / n))), t(h / 2 * (1 + Math.sin(2 * Math.PI * i / n)))));
        }
        return FloorSketch.straight(corners);
    }

    private FloorSketch sliver(double w) {
        return FloorSketch.straight(box(t(w * dice.whole(1, 4)), dice.tenths(20, 330)));
    }

    /** A side with many small teeth. */
    private FloorSketch jagged(double w, double h) {
        List<double[]> corners = new ArrayList<>(List.of(p(0, 0), p(w, 0)));
        int teeth = dice.whole(2, 40);
        for (int i = 0; i <= teeth; i++) {
            corners.add(p(t(w - w * i / teeth), i % 2 == 0 ? h : t(h - dice.tenths(1, h / 4))));
        }
        return FloorSketch.straight(corners);
    }

    private static double t(double value) {
        return FloorSketch.tenth(value);
    }

    private static double[] p(double x, double y) {
        return new double[] {x, y};
    }
}
