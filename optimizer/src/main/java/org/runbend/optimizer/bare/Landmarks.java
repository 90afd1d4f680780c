package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Geometry;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Names a place by the mark, keep-out or corner next to it. */
final class Landmarks {
    /** Between chords of an arc the outline turns less, and nobody sees a corner, degrees. */
    private static final double FLAT = 10;

    private record Landmark(String name, Geometry shape) {}

    private final List<Landmark> all = new ArrayList<>();

    Landmarks(Job.FloorPlan floor) {
        List<Point> outline = floor.outline();
        for (Job.FloorMark mark : floor.marks()) {
            boolean side = mark.edge() >= 0 && mark.edge() < outline.size();
            Point from = side ? outline.get(mark.edge()) : mark.at();
            Point to = side ? outline.get((mark.edge() + 1) % outline.size()) : mark.at();
            all.add(new Landmark(mark.text(), FloorShapes.line(from, to)));
        }
        for (KeepOut k : floor.keepOuts()) {
            all.add(new Landmark(k.name(), FloorShapes.bare(k.bare())));
        }
        for (int i = 0; i < outline.size(); i++) {
            if (turn(outline, i) > FLAT) {
                all.add(new Landmark("the corner " + brackets(outline.get(i)), point(outline.get(i))));
            }
        }
    }

    /** By how much the outline turns at a corner, degrees. */
    private static double turn(List<Point> outline, int i) {
        Point a = outline.get((i + outline.size() - 1) % outline.size());
        Point b = outline.get(i);
        Point c = outline.get((i + 1) % outline.size());
        double in = Math.atan2(b.y() - a.y(), b.x() - a.x());
        double out = Math.atan2(c.y() - b.y(), c.x() - b.x());
        return Math.abs(Math.IEEEremainder(Math.toDegrees(out - in), 360));
    }

    /** The place and what is nearest to it; the first in the order marks, keep-outs, corners among equals. */
    String words(Point at) {
        Geometry place = point(at);
        String nearest = "";
        double least = Double.POSITIVE_INFINITY;
        for (Landmark landmark : all) {
            double away = Math.rint(10 * landmark.shape.distance(place));
            if (away < least) {
                least = away;
                nearest = " near " + landmark.name;
            }
        }
        return "at " + brackets(at) + nearest;
    }

    /** A point in whole mm. */
    static String brackets(Point p) {
        return String.format(Locale.ROOT, "[%d, %d]", Math.round(p.x()), Math.round(p.y()));
    }

    private static Geometry point(Point p) {
        return FloorShapes.bare(new Shape.Spot(p, 0.1));
    }
}
