package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.Comparator;
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

    /**
     * The parts of an element that lie on others, or those that do not, in order; less than half a millimetre is no part.
     *
     * @param lying whether the parts that lie on the others are wanted, or the rest
     */
    public static List<Element> parts(Element element, List<Element> others, boolean lying) {
        List<double[]> on = others.stream()
                .flatMap(o -> overlaps(element, o).stream())
                .sorted(Comparator.comparingDouble(o -> o[0]))
                .toList();
        List<Element> parts = new ArrayList<>();
        double done = 0;
        for (double[] o : on) {
            add(parts, element, done, o[0], !lying);
            add(parts, element, Math.max(done, o[0]), o[1], lying);
            done = Math.max(done, o[1]);
        }
        add(parts, element, done, element.length(), !lying);
        return parts;
    }

    private static void add(List<Element> parts, Element e, double from, double to, boolean wanted) {
        if (!wanted || to - from <= SAME) {
            return;
        }
        if (e instanceof Element.Run run) {
            parts.add(new Element.Run(run.along(from), run.along(to)));
        } else {
            Element.Bend bend = (Element.Bend) e;
            double degrees = Math.toDegrees(to - from) / bend.radius() * Math.signum(bend.turn());
            parts.add(new Element.Bend(along(bend, from), along(bend, to), bend.centre(), bend.radius(), degrees));
        }
    }

    private static Point along(Element.Bend bend, double length) {
        double turned = Math.signum(bend.turn()) * length / bend.radius();
        double x = bend.from().x() - bend.centre().x();
        double y = bend.from().y() - bend.centre().y();
        return new Point(
                bend.centre().x() + x * Math.cos(turned) - y * Math.sin(turned),
                bend.centre().y() + x * Math.sin(turned) + y * Math.cos(turned));
    }

    private static List<double[]> overlaps(Element a, Element b) {
        if (a instanceof Element.Run r && b instanceof Element.Run s) {
            return overlaps(r, s);
        }
        return a instanceof Element.Bend c && b instanceof Element.Bend d ? overlaps(c, d) : List.of();
    }

    private static double common(Element a, Element b) {
        return overlaps(a, b).stream().mapToDouble(o -> o[1] - o[0]).sum();
    }

    /** Where a run lies on another, from and to along it, mm; empty where it does not. */
    private static List<double[]> overlaps(Element.Run a, Element.Run b) {
        double length = a.length();
        double ux = (a.to().x() - a.from().x()) / length;
        double uy = (a.to().y() - a.from().y()) / length;
        if (Math.abs(off(a, b.from(), ux, uy)) > SAME || Math.abs(off(a, b.to(), ux, uy)) > SAME) {
            return List.of();
        }
        double s = along(a, b.from(), ux, uy);
        double t = along(a, b.to(), ux, uy);
        double from = Math.max(Math.min(s, t), 0);
        double to = Math.min(Math.max(s, t), length);
        return to > from ? List.<double[]>of(new double[] {from, to}) : List.of();
    }

    private static double along(Element.Run a, Point p, double ux, double uy) {
        return (p.x() - a.from().x()) * ux + (p.y() - a.from().y()) * uy;
    }

    private static double off(Element.Run a, Point p, double ux, double uy) {
        return (p.y() - a.from().y()) * ux - (p.x() - a.from().x()) * uy;
    }

    /** Where a bend lies on another, from and to along it, mm. */
    private static List<double[]> overlaps(Element.Bend a, Element.Bend b) {
        if (a.centre().distance(b.centre()) > SAME || Math.abs(a.radius() - b.radius()) > SAME) {
            return List.of();
        }
        List<double[]> overlaps = new ArrayList<>();
        double start = first(a);
        double all = Math.abs(a.turn());
        double other = first(b);
        for (int round = -1; round <= 1; round++) {
            double from = Math.max(0, other + 360 * round - start);
            double to = Math.min(all, other + 360 * round - start + Math.abs(b.turn()));
            if (to > from) {
                double one = a.radius() * Math.toRadians(a.turn() > 0 ? from : all - to);
                overlaps.add(new double[] {one, one + a.radius() * Math.toRadians(to - from)});
            }
        }
        return overlaps;
    }

    /** Where the arc begins if it is gone anticlockwise, degrees, 0 to under 360. */
    private static double first(Element.Bend bend) {
        Point p = bend.turn() > 0 ? bend.from() : bend.to();
        double degrees = Math.toDegrees(
                Math.atan2(p.y() - bend.centre().y(), p.x() - bend.centre().x()));
        return (degrees + 360) % 360;
    }
}
