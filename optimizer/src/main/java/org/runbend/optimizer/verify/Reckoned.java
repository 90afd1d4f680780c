package org.runbend.optimizer.verify;

import java.util.List;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** Lengths and bends of pipe, reckoned from the ends alone and not asked of the elements themselves. */
final class Reckoned {
    private Reckoned() {}

    /** Length of an element, mm: distance of a run's ends, radius times angle of a bend. */
    static double length(Element element) {
        if (element instanceof Element.Bend bend) {
            return bend.radius() * Math.abs(bend.turn()) * Math.PI / 180;
        }
        return distance(element.from(), element.to());
    }

    /** Distance of two points, mm. */
    static double distance(Point a, Point b) {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** Length of all elements, mm. */
    static double length(List<Element> elements) {
        double sum = 0;
        for (Element e : elements) {
            sum += length(e);
        }
        return sum;
    }

    /** Degrees that all bends turn by, either way. */
    static double degrees(List<Element> elements) {
        double sum = 0;
        for (Element e : elements) {
            sum += e instanceof Element.Bend bend ? Math.abs(bend.turn()) : 0;
        }
        return sum;
    }

    /** Quarter bends of an element. */
    static long quarters(Element element) {
        return element instanceof Element.Bend bend ? Math.round(Math.abs(bend.turn()) / 90) : 0;
    }
}
