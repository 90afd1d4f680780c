package org.runbend.optimizer.guide;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.job.Point;

/**
 * The edge of a slot of one width along a line of straights and arcs, with half circles round its ends: all points half
 * the width away from the line. Arcs of over 180 degrees go as two, as some programs misread longer ones.
 */
final class SlotEdge {
    private SlotEdge() {}

    /** The edge, anticlockwise. */
    static List<Corner> of(List<Element> way, double width) {
        List<Corner> edge = new ArrayList<>();
        List<Element> parts = way.stream().flatMap(e -> halves(e).stream()).toList();
        for (Element e : parts) {
            edge.add(beside(e, -width / 2));
        }
        Element last = parts.get(parts.size() - 1);
        edge.add(new Corner(end(last, -width / 2), 1));
        List<Element> back = new ArrayList<>(parts);
        Collections.reverse(back);
        for (Element e : back) {
            edge.add(new Corner(end(e, width / 2), e instanceof Element.Bend b ? -bulge(b) : 0));
        }
        edge.add(new Corner(beside(parts.get(0), width / 2).at(), 1));
        return edge;
    }

    /** A circle, as two half circles. */
    static List<Corner> circle(Point centre, double diameter) {
        return List.of(
                new Corner(new Point(centre.x() + diameter / 2, centre.y()), 1),
                new Corner(new Point(centre.x() - diameter / 2, centre.y()), 1));
    }

    private static List<Element> halves(Element e) {
        if (e instanceof Element.Bend b && Math.abs(b.turn()) > 180 + 1e-9) {
            double half = b.turn() / 2;
            Point middle = turned(b.from(), b.centre(), half);
            return List.of(
                    new Element.Bend(b.from(), middle, b.centre(), b.radius(), half),
                    new Element.Bend(middle, b.to(), b.centre(), b.radius(), half));
        }
        return List.of(e);
    }

    private static Point turned(Point p, Point centre, double degrees) {
        double c = StrictMath.cos(Math.toRadians(degrees));
        double s = StrictMath.sin(Math.toRadians(degrees));
        double dx = p.x() - centre.x();
        double dy = p.y() - centre.y();
        return new Point(centre.x() + c * dx - s * dy, centre.y() + s * dx + c * dy);
    }

    private static double bulge(Element.Bend bend) {
        return StrictMath.tan(Math.toRadians(bend.turn()) / 4);
    }

    /** Where the edge beside an element begins, so far to its left, and how it goes on. */
    private static Corner beside(Element e, double left) {
        if (e instanceof Element.Bend b) {
            return new Corner(scaled(b, b.from(), left), bulge(b));
        }
        return new Corner(shifted((Element.Run) e, e.from(), left), 0);
    }

    private static Point end(Element e, double left) {
        return e instanceof Element.Bend b ? scaled(b, b.to(), left) : shifted((Element.Run) e, e.to(), left);
    }

    private static Point scaled(Element.Bend b, Point p, double left) {
        double share = 1 - Math.signum(b.turn()) * left / b.radius();
        return new Point(
                b.centre().x() + share * (p.x() - b.centre().x()),
                b.centre().y() + share * (p.y() - b.centre().y()));
    }

    private static Point shifted(Element.Run run, Point p, double left) {
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        return new Point(p.x() - left * uy, p.y() + left * ux);
    }
}
