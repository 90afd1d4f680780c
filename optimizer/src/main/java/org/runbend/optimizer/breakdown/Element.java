package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Point;

/** A part of a loop, in order of flow. Sizes in mm, angles in degrees. */
public sealed interface Element permits Element.Run, Element.Bend {
    /** Where it starts. */
    Point from();

    /** Where it ends. */
    Point to();

    /** Length of the centreline, mm. */
    double length();

    /** Its points after the first; an arc goes as chords of so many degrees at most. */
    default List<Point> onwards(double chord) {
        return List.of(to());
    }

    /**
     * A straight stretch, as long as it goes.
     *
     * @param from start
     * @param to end
     */
    record Run(Point from, Point to) implements Element {
        @Override
        public double length() {
            return from.distance(to);
        }

        /** The point at a distance from the start, mm. */
        public Point along(double distance) {
            double t = distance / length();
            return new Point(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()));
        }
    }

    /**
     * An arc.
     *
     * @param from start
     * @param to end
     * @param centre its centre
     * @param radius mm
     * @param turn degrees, anticlockwise positive
     */
    record Bend(Point from, Point to, Point centre, double radius, double turn) implements Element {
        @Override
        public double length() {
            return radius * Math.toRadians(Math.abs(turn));
        }

        @Override
        public List<Point> onwards(double chord) {
            List<Point> points = new ArrayList<>();
            int chords = (int) Math.ceil(Math.abs(turn) / chord);
            double start = Math.atan2(from.y() - centre.y(), from.x() - centre.x());
            for (int i = 1; i < chords; i++) {
                double angle = start + Math.toRadians(turn) * i / chords;
                points.add(new Point(centre.x() + radius * Math.cos(angle), centre.y() + radius * Math.sin(angle)));
            }
            points.add(to);
            return points;
        }

        /** Number of quarter bends it makes, rounded. */
        public int quarters() {
            return (int) Math.round(Math.abs(turn) / 90);
        }
    }
}
