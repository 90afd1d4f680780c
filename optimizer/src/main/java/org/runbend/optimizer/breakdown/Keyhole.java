package org.runbend.optimizer.breakdown;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * A return bend for pipe that is a little too stiff for a half circle: an arc outward, one of over 180 degrees and an arc
 * outward again, all of one radius R and tangent. Sizes in mm.
 *
 * <p>With legs 2a apart the main arc's centre lies on the middle line, R inside the outermost point; an outer arc's centre
 * lies a + R beside it, 2R away, as the circles touch. So they lie h = sqrt(4 R^2 - (a + R)^2) apart along the legs, an
 * outer arc turns by t with cos t = (a + R) / (2 R), the main one by 180 + 2 t degrees, the bend takes h + R of both legs
 * and swings out R - a on each side (plane geometry of tangent circles).
 *
 * @param first corner of the leg that comes
 * @param second corner of the leg that goes
 * @param inward unit vector from a corner along its leg
 * @param radius of all three arcs, at least half the distance of the corners and at most all of it
 */
public record Keyhole(Point first, Point second, Point inward, double radius) {
    /** Where the main arc is wider than this, it comes too near to the pipe beside it, in halves of the spacing. */
    private static final double WIDEST = 1.1;

    /** Checks the radius. */
    public Keyhole {
        double half = first.distance(second) / 2;
        if (!(radius >= half - 1e-9 && radius <= 2 * half + 1e-9)) {
            throw new IllegalArgumentException(
                    "radius " + radius + " mm must be " + half + " to " + 2 * half + " mm for a keyhole");
        }
    }

    /**
     * Whether two such bends may lie side by side: at R = 1.1 a they swing out a tenth of a each, and 0.9 of the spacing
     * stays between them, the least that is asked of pipe beside pipe.
     */
    public static boolean fitsBeside(double spacing, double radius) {
        return radius <= WIDEST * spacing / 2 + 1e-9;
    }

    private double half() {
        return first.distance(second) / 2;
    }

    /** What it takes of both legs. */
    public double depth() {
        double a = half();
        return radius + Math.sqrt(Math.max(0, 4 * radius * radius - (a + radius) * (a + radius)));
    }

    /** Degrees that an outer arc turns by. */
    public double outward() {
        return Math.toDegrees(Math.acos(Math.min(1, (half() + radius) / (2 * radius))));
    }

    /** The three arcs in order of flow. */
    public List<Element.Bend> arcs() {
        double dx = (second.x() - first.x()) / (2 * half());
        double dy = (second.y() - first.y()) / (2 * half());
        double hand = Math.signum(-inward.x() * dy + inward.y() * dx);
        Point start = along(first, depth());
        Point end = along(second, depth());
        Point before = new Point(start.x() - radius * dx, start.y() - radius * dy);
        Point after = new Point(end.x() + radius * dx, end.y() + radius * dy);
        Point main = along(middle(first, second), radius);
        Point in = middle(before, main);
        Point out = middle(main, after);
        double turn = outward();
        return List.of(
                new Element.Bend(start, in, before, radius, -hand * turn),
                new Element.Bend(in, out, main, radius, hand * (180 + 2 * turn)),
                new Element.Bend(out, end, after, radius, -hand * turn));
    }

    private Point along(Point from, double distance) {
        return new Point(from.x() + distance * inward.x(), from.y() + distance * inward.y());
    }

    private static Point middle(Point a, Point b) {
        return new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }
}
