package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/**
 * How much of the heated floor loops serve: its area within half a spacing of pipe that lies on heated floor. Pipe on unheated
 * floor serves nothing, and floor between two pipes counts once, so it is never more than all of it.
 */
final class ServedFloor {
    /** Degrees of an arc that a chord stands for: 75 mm x (1 - cos 2.5 degrees) = 0.07 mm off. */
    private static final double CHORD = 5;

    private static final int QUARTER = 16;

    private ServedFloor() {}

    /** The share, 0 to 1. */
    static double share(Job job, List<Breakdown> loops) {
        Geometry heated = FloorShapes.heated(job.floor());
        if (heated.isEmpty()) {
            return 0;
        }
        Geometry served = null;
        for (Breakdown loop : loops) {
            Geometry pipe = FloorShapes.lessUnheated(FloorShapes.line(centreline(loop)), job.floor());
            Geometry near = pipe.buffer(job.layout().spacing() / 2, QUARTER);
            served = served == null ? near : OverlayNGRobust.overlay(served, near, OverlayNG.UNION);
        }
        return served == null
                ? 0
                : Math.min(
                        1,
                        OverlayNGRobust.overlay(served, heated, OverlayNG.INTERSECTION)
                                        .getArea()
                                / heated.getArea());
    }

    private static List<Point> centreline(Breakdown loop) {
        List<Point> points = new ArrayList<>();
        points.add(loop.elements().get(0).from());
        for (Element e : loop.elements()) {
            if (e instanceof Element.Bend bend) {
                addArc(bend, points);
            }
            points.add(e.to());
        }
        return points;
    }

    private static void addArc(Element.Bend bend, List<Point> points) {
        int chords = (int) Math.ceil(Math.abs(bend.turn()) / CHORD);
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
}
