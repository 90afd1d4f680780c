package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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

    /** Walls that run more alike than this do not fix a place, degrees. */
    private static final double LIKE = 30;

    /** Shorter sides are no walls to measure from, mm. */
    private static final double SHORT = 200;

    /** Corners this near to a side's line lie on it, mm. */
    private static final double ON = 1;

    private final Job.FloorPlan floor;

    private record Landmark(String name, Geometry shape) {}

    private final List<Landmark> all = new ArrayList<>();

    Landmarks(Job.FloorPlan floor) {
        this.floor = floor;
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
        return "at " + brackets(at) + nearest + walls(at);
    }

    /**
     * A side of the outline, its direction in degrees, how far a place lies off it, mm, and whether the floor ends there: the
     * side of a notch faces like another wall and is told by its corners.
     */
    private record Wall(Point from, Point to, double direction, double away, boolean outer, String mark) {
        String words() {
            double turned = Math.abs(Math.IEEEremainder(direction, 90));
            String side = turned > FLAT / 10 || !outer
                    ? "wall from " + brackets(from) + " to " + brackets(to)
                    : switch (Math.floorMod(Math.round(direction / 90), 4)) {
                        case 0 -> "lower wall";
                        case 1 -> "right wall";
                        case 2 -> "upper wall";
                        default -> "left wall";
                    };
            return Math.round(away) + " mm from the " + side + (mark.isEmpty() ? "" : " (" + mark + ")");
        }
    }

    /** What a tape shows from the two nearest walls that do not run alike; empty where there are none. */
    private String walls(Point at) {
        List<Wall> near = new ArrayList<>();
        List<Point> outline = floor.outline();
        double hand = twiceArea(outline) > 0 ? 0 : 180;
        for (int i = 0; i < outline.size(); i++) {
            wall(i, hand, at).ifPresent(near::add);
        }
        near.sort(Comparator.<Wall>comparingDouble(w -> Math.rint(10 * w.away)).thenComparing(w -> !w.outer));
        for (Wall other : near) {
            double between = Math.abs(Math.IEEEremainder(other.direction - near.get(0).direction, 180));
            if (between > LIKE) {
                return ", " + near.get(0).words() + " and " + other.words();
            }
        }
        return "";
    }

    /** The side from corner i, if it is long enough and a tape held square to it meets the place. */
    private Optional<Wall> wall(int i, double hand, Point at) {
        List<Point> outline = floor.outline();
        Point a = outline.get(i);
        Point b = outline.get((i + 1) % outline.size());
        double length = a.distance(b);
        double along = ((at.x() - a.x()) * (b.x() - a.x()) + (at.y() - a.y()) * (b.y() - a.y())) / length;
        double off = off(a, b, at);
        boolean inside = hand == 0 ? off > 0 : off < 0;
        if (length < SHORT || along < 0 || along > length || !inside) {
            return Optional.empty();
        }
        String mark = floor.marks().stream()
                .filter(m -> m.edge() == i)
                .map(Job.FloorMark::text)
                .findFirst()
                .orElse("");
        double direction = Math.toDegrees(Math.atan2(b.y() - a.y(), b.x() - a.x())) + hand;
        boolean outer = outline.stream().allMatch(p -> off(a, b, p) * (hand == 0 ? 1 : -1) >= -ON);
        return Optional.of(new Wall(a, b, direction, Math.abs(off), outer, mark));
    }

    /** How far a point lies to the left of a line, mm. */
    private static double off(Point a, Point b, Point p) {
        return ((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x())) / a.distance(b);
    }

    private static double twiceArea(List<Point> outline) {
        double twice = 0;
        for (int i = 0; i < outline.size(); i++) {
            Point a = outline.get(i);
            Point b = outline.get((i + 1) % outline.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return twice;
    }

    /** A point in whole mm. */
    static String brackets(Point p) {
        return String.format(Locale.ROOT, "[%d, %d]", Math.round(p.x()), Math.round(p.y()));
    }

    private static Geometry point(Point p) {
        return FloorShapes.bare(new Shape.Spot(p, 0.1));
    }
}
