package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.job.Point;

/**
 * The edge of one channel: its right side in the direction of flow, round the end, its left side back, round the start.
 *
 * <p>A straight narrows behind a bend by two equal tangent arcs of radius R that move the edge sideways by d over a length
 * T = sqrt(4 R d - d^2), each turning by acos(1 - d / (2 R)) (chord geometry). A straight too short for that keeps the
 * width of bends. A pad is a circle around the end of the pipe.
 */
final class ChannelEdge {
    /** Radius of the arcs by which the width changes, in cutter diameters; own choice, well over the radius of any cutter. */
    private static final double EASE = 3;

    private final ChannelSize size;
    private final List<Element> elements;
    private final double wide;
    private final double narrow;
    private final double ease;
    private final double shift;

    ChannelEdge(ChannelSize size, List<Element> elements) {
        this.size = size;
        this.elements = elements;
        wide = size.bendWidth() / 2;
        narrow = size.width() / 2;
        ease = EASE * size.cutter();
        double d = wide - narrow;
        shift = Math.sqrt(Math.max(0, 4 * ease * d - d * d));
    }

    /** The corners, anticlockwise. */
    List<Corner> corners() {
        List<Leg> right = side(-1);
        List<Leg> left = side(1);
        List<Leg> all = new ArrayList<>(right);
        all.addAll(cap(elements.get(elements.size() - 1), true));
        List<Leg> back = new ArrayList<>(left);
        Collections.reverse(back);
        back.forEach(leg -> all.add(new Leg(leg.to(), leg.from(), -leg.bulge())));
        all.addAll(cap(elements.get(0), false));
        return all.stream().map(leg -> new Corner(leg.from(), leg.bulge())).toList();
    }

    /** A part of the edge. */
    private record Leg(Point from, Point to, double bulge) {}

    private List<Leg> side(int sign) {
        List<Leg> legs = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            if (elements.get(i) instanceof Element.Bend bend) {
                legs.add(along(bend, sign));
            } else {
                straight((Element.Run) elements.get(i), i, sign, legs);
            }
        }
        return legs;
    }

    private Leg along(Element.Bend bend, int sign) {
        double radius = bend.radius() - sign * Math.signum(bend.turn()) * wide;
        double share = radius / bend.radius();
        return new Leg(
                towards(bend.centre(), bend.from(), share),
                towards(bend.centre(), bend.to(), share),
                StrictMath.tan(Math.toRadians(bend.turn()) / 4));
    }

    private void straight(Element.Run run, int i, int sign, List<Leg> legs) {
        boolean atStart = i == 0;
        boolean atEnd = i == elements.size() - 1;
        if (!narrows(run, i)) {
            legs.add(new Leg(beside(run, 0, sign * wide), beside(run, run.length(), sign * wide), 0));
            return;
        }
        double from = atStart ? mouth() : shift;
        double to = run.length() - (atEnd ? mouth() : shift);
        if (!atStart && shift > 0) {
            ease(run, sign, 0, shift, legs);
        }
        legs.add(new Leg(beside(run, from, sign * narrow), beside(run, to, sign * narrow), 0));
        if (!atEnd && shift > 0) {
            ease(run, sign, run.length(), -shift, legs);
        }
    }

    /** The two arcs by which the edge goes in behind a bend, or out before one ({@code length} negative). */
    private void ease(Element.Run run, int sign, double at, double length, List<Leg> legs) {
        double bulge = sign * StrictMath.tan(StrictMath.acos(1 - (wide - narrow) / (2 * ease)) / 4);
        Point outer = beside(run, at, sign * wide);
        Point middle = beside(run, at + length / 2, sign * (wide + narrow) / 2);
        Point inner = beside(run, at + length, sign * narrow);
        if (length > 0) {
            legs.add(new Leg(outer, middle, -bulge));
            legs.add(new Leg(middle, inner, bulge));
        } else {
            legs.add(new Leg(inner, middle, bulge));
            legs.add(new Leg(middle, outer, -bulge));
        }
    }

    private boolean narrows(Element.Run run, int i) {
        double from = i == 0 ? mouth() : shift;
        double to = i == elements.size() - 1 ? mouth() : shift;
        return run.length() > from + to + 1;
    }

    /** From the middle of a pad to where its circle meets the sides; 0 without a pad. */
    private double mouth() {
        double r = size.pad() / 2;
        return r > narrow ? Math.sqrt(r * r - narrow * narrow) : 0;
    }

    /** Round the end (or the start) of the pipe: a pad, or a half circle as wide as the channel is there. */
    private List<Leg> cap(Element element, boolean atEnd) {
        double half =
                element instanceof Element.Run run && narrows(run, atEnd ? elements.size() - 1 : 0) ? narrow : wide;
        Element.Run axis = axis(element, atEnd);
        double length = axis.length();
        double r = size.pad() / 2;
        if (half == wide || r <= narrow) {
            return List.of(new Leg(beside(axis, length, -half), beside(axis, length, half), 1));
        }
        double quarterOfSweep = (Math.PI - StrictMath.asin(narrow / r)) / 4;
        double bulge = StrictMath.tan(quarterOfSweep);
        Point front = beside(axis, length + r, 0);
        return List.of(
                new Leg(beside(axis, length - mouth(), -narrow), front, bulge),
                new Leg(front, beside(axis, length - mouth(), narrow), bulge));
    }

    /** A straight that ends where the pipe does, in the direction in which it leaves the loop. */
    private static Element.Run axis(Element element, boolean atEnd) {
        if (element instanceof Element.Run run) {
            return atEnd ? run : new Element.Run(run.to(), run.from());
        }
        Element.Bend bend = (Element.Bend) element;
        Point end = atEnd ? bend.to() : bend.from();
        double turn = Math.signum(bend.turn()) * (atEnd ? 1 : -1);
        double dx = -(end.y() - bend.centre().y()) * turn;
        double dy = (end.x() - bend.centre().x()) * turn;
        return new Element.Run(new Point(end.x() - dx, end.y() - dy), end);
    }

    private static Point towards(Point centre, Point p, double share) {
        return new Point(centre.x() + (p.x() - centre.x()) * share, centre.y() + (p.y() - centre.y()) * share);
    }

    /** The point at a distance along a run and to its left. */
    private static Point beside(Element.Run run, double along, double left) {
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        return new Point(run.from().x() + along * ux - left * uy, run.from().y() + along * uy + left * ux);
    }
}
