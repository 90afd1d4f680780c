package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Point;

/**
 * Breaks down a loop as somebody drew it. Arcs are bends as they are; the corners of the straight ways between them are
 * rounded at the radius wanted, or at the largest that their legs leave.
 */
public final class DrawnBreakdown {
    /** Arcs whose centres and radii differ by less are one bend: drawings are rounded, mm. */
    private static final double SAME = 0.02;

    /** Angles of a drawing that are whole degrees but for rounding, degrees. */
    private static final double WHOLE = 1e-5;

    private final double wanted;
    private final double spacing;

    /**
     * A breakdown.
     *
     * @param wanted radius of corners, mm
     * @param spacing of the lattice that a loop may have been drawn on, mm
     */
    public DrawnBreakdown(double wanted, double spacing) {
        this.wanted = wanted;
        this.spacing = spacing;
    }

    /** The loop as runs and bends. */
    public Breakdown of(DrawnLoop loop) {
        if (IntStream.range(0, loop.points().size() - 1).allMatch(i -> loop.bulge(i) == 0)) {
            return new Filleting().breakDownDrawn(DrawnGrid.onto(loop.points(), spacing), wanted);
        }
        List<Element> elements = new ArrayList<>();
        List<Point> straight = new ArrayList<>();
        for (int i = 0; i + 1 < loop.points().size(); i++) {
            Point from = loop.points().get(i);
            if (loop.bulge(i) == 0) {
                straight.add(from);
                continue;
            }
            addStraight(elements, straight, from);
            addArc(elements, arc(from, loop.points().get(i + 1), loop.bulge(i)));
        }
        addStraight(elements, straight, loop.points().get(loop.points().size() - 1));
        return new Breakdown(elements);
    }

    /** Adds the straight ways that lead to a point, and forgets them. */
    private void addStraight(List<Element> elements, List<Point> straight, Point end) {
        if (!straight.isEmpty()) {
            straight.add(end);
            elements.addAll(new Filleting().breakDownDrawn(straight, wanted).elements());
            straight.clear();
        }
    }

    /** The bend over the angle 4 atan(bulge): its centre lies on the chord's bisector, at (1 - b^2) / 4b of the chord. */
    private static Element.Bend arc(Point from, Point to, double bulge) {
        double turn = Math.toDegrees(4 * Math.atan(bulge));
        double whole = Math.rint(turn);
        double off = (1 - bulge * bulge) / (4 * bulge);
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        Point centre = new Point((from.x() + to.x()) / 2 - off * dy, (from.y() + to.y()) / 2 + off * dx);
        double radius = from.distance(to) * (1 + bulge * bulge) / (4 * Math.abs(bulge));
        return new Element.Bend(from, to, centre, radius, Math.abs(turn - whole) < WHOLE ? whole : turn);
    }

    /** Adds an arc, or lets the bend before go on if it is of the same circle. */
    private static void addArc(List<Element> elements, Element.Bend arc) {
        int last = elements.size() - 1;
        if (last >= 0
                && elements.get(last) instanceof Element.Bend before
                && before.turn() * arc.turn() > 0
                && Math.abs(before.turn() + arc.turn()) < 360
                && Math.abs(before.radius() - arc.radius()) < SAME
                && before.centre().distance(arc.centre()) < SAME) {
            double turn = before.turn() + arc.turn();
            elements.set(last, new Element.Bend(before.from(), arc.to(), before.centre(), before.radius(), turn));
        } else {
            elements.add(arc);
        }
    }
}
