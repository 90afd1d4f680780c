package org.runbend.optimizer.breakdown;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.runbend.optimizer.job.Point;

/**
 * The lattice that a drawn loop was meant to lie on. Drawings give coordinates with one to six decimals, so the right angles
 * and equal distances of a loop in a turned room come out a little off; bends that fill their legs would then miss each
 * other by hundredths. A loop all of whose corners lie next to one lattice of the spacing is put onto it. Sizes in mm.
 */
final class DrawnGrid {
    /** Two roundings to a tenth, each along both axes, and no more: what is further off was meant so. */
    private static final double NEXT_TO = 0.2;

    private DrawnGrid() {}

    /** The points on their lattice; as they are if any lies further from it than rounding explains. */
    static List<Point> onto(List<Point> points, double spacing) {
        double angle = angle(points);
        List<Point> level = points.stream().map(p -> turned(p, -angle)).toList();
        double x = offset(level, Point::x, spacing);
        double y = offset(level, Point::y, spacing);
        List<Point> grid = level.stream()
                .map(p -> new Point(nearest(p.x(), x, spacing), nearest(p.y(), y, spacing)))
                .toList();
        for (int i = 0; i < grid.size(); i++) {
            if (grid.get(i).distance(level.get(i)) > NEXT_TO) {
                return points;
            }
        }
        return grid.stream().map(p -> turned(p, angle)).toList();
    }

    /** Direction of the legs, of four at right angles any one, radians; long legs count more, as they show it better. */
    private static double angle(List<Point> points) {
        double re = 0;
        double im = 0;
        for (int i = 1; i < points.size(); i++) {
            double dx = points.get(i).x() - points.get(i - 1).x();
            double dy = points.get(i).y() - points.get(i - 1).y();
            double four = 4 * Math.atan2(dy, dx);
            double weight = dx * dx + dy * dy;
            re += weight * Math.cos(four);
            im += weight * Math.sin(four);
        }
        return Math.atan2(im, re) / 4;
    }

    private static Point turned(Point p, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new Point(c * p.x() - s * p.y(), s * p.x() + c * p.y());
    }

    /** Mean place of the points within a spacing, measured from the first so that it cannot wrap. */
    private static double offset(List<Point> points, ToDoubleFunction<Point> axis, double spacing) {
        double first = axis.applyAsDouble(points.get(0));
        double off = points.stream()
                .mapToDouble(p -> Math.IEEEremainder(axis.applyAsDouble(p) - first, spacing))
                .average()
                .orElseThrow();
        return first + off;
    }

    private static double nearest(double value, double offset, double spacing) {
        return offset + spacing * Math.rint((value - offset) / spacing);
    }
}
