package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** A loop's centreline as points; arcs become chords of 5 degrees. */
final class Centreline {
    private static final double CHORD = 5;

    private Centreline() {}

    /** Every point once, lead-ins included. */
    static List<Point> of(Breakdown loop) {
        return of(loop, CHORD);
    }

    /** The same, with chords of so many degrees at most. */
    static List<Point> of(Breakdown loop, double chord) {
        List<Point> points = new ArrayList<>();
        points.add(loop.elements().get(0).from());
        loop.elements().forEach(e -> points.addAll(onwards(e, chord)));
        return points;
    }

    /** The points of an element after its first. */
    static List<Point> onwards(Element element) {
        return onwards(element, CHORD);
    }

    private static List<Point> onwards(Element element, double chord) {
        List<Point> points = new ArrayList<>();
        if (element instanceof Element.Bend bend) {
            int chords = (int) Math.ceil(Math.abs(bend.turn()) / chord);
            double start = Math.atan2(
                    bend.from().y() - bend.centre().y(),
                    bend.from().x() - bend.centre().x());
            for (int i = 1; i < chords; i++) {
                double angle = start + Math.toRadians(bend.turn()) * i / chords;
                points.add(new Point(
                        bend.centre().x() + bend.radius() * Math.cos(angle),
                        bend.centre().y() + bend.radius() * Math.sin(angle)));
            }
        }
        points.add(element.to());
        return points;
    }
}
