package org.runbend.optimizer.breakdown;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * How much pipe of one loop lies where pipe of another lies: runs on one line and bends about one centre, by how far they
 * overlap. Half a millimetre is forgiven. Sizes in mm.
 */
public final class SamePipe {
    private static final double SAME = 0.5;

    private SamePipe() {}

    /** Length of the elements that lies on the others; neither list may run twice over one place. */
    public static double common(List<Element> elements, List<Element> others) {
        return elements.stream().mapToDouble(e -> common(e, others)).sum();
    }

    /** Length of one element that lies on the others. */
    public static double common(Element element, List<Element> others) {
        return others.stream().mapToDouble(o -> common(element, o)).sum();
    }

    private static double common(Element a, Element b) {
        if (a instanceof Element.Run r && b instanceof Element.Run s) {
            return common(r, s);
        }
        return a instanceof Element.Bend c && b instanceof Element.Bend d ? common(c, d) : 0;
    }

    private static double common(Element.Run a, Element.Run b) {
        double length = a.length();
        double ux = (a.to().x() - a.from().x()) / length;
        double uy = (a.to().y() - a.from().y()) / length;
        if (Math.abs(off(a, b.from(), ux, uy)) > SAME || Math.abs(off(a, b.to(), ux, uy)) > SAME) {
            return 0;
        }
        double s = along(a, b.from(), ux, uy);
        double t = along(a, b.to(), ux, uy);
        return Math.max(0, Math.min(Math.max(s, t), length) - Math.max(Math.min(s, t), 0));
    }

    private static double along(Element.Run a, Point p, double ux, double uy) {
        return (p.x() - a.from().x()) * ux + (p.y() - a.from().y()) * uy;
    }

    private static double off(Element.Run a, Point p, double ux, double uy) {
        return (p.y() - a.from().y()) * ux - (p.x() - a.from().x()) * uy;
    }

    private static double common(Element.Bend a, Element.Bend b) {
        if (a.centre().distance(b.centre()) > SAME || Math.abs(a.radius() - b.radius()) > SAME) {
            return 0;
        }
        double overlap = 0;
        double start = first(a);
        double other = first(b);
        for (int round = -1; round <= 1; round++) {
            double from = Math.max(start, other + 360 * round);
            double to = Math.min(start + Math.abs(a.turn()), other + 360 * round + Math.abs(b.turn()));
            overlap += Math.max(0, to - from);
        }
        return a.radius() * Math.toRadians(overlap);
    }

    /** Where the arc begins if it is gone anticlockwise, degrees, 0 to under 360. */
    private static double first(Element.Bend bend) {
        Point p = bend.turn() > 0 ? bend.from() : bend.to();
        double degrees = Math.toDegrees(
                Math.atan2(p.y() - bend.centre().y(), p.x() - bend.centre().x()));
        return (degrees + 360) % 360;
    }
}
