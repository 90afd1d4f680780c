package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Vertex;

/**
 * Walls drawn with their thickness. A closed line that is thin all along and has ends that face each other is a wall with
 * doors: each opening is closed straight, and what comes out are its faces. Two closed lines one in the other, near each
 * other all round, are the faces of a wall. Thicknesses and widths of doors are common practice.
 */
final class Walls {
    private static final double MOST_THICK = 400;
    private static final double LEAST_THICK = 5;
    private static final double WIDEST_DOOR = 1600;
    /** A wall goes round at least this much, mm2. */
    private static final double LEAST_ROOM = 0.5e6;

    private static final double ASKEW = 10;
    private static final double RIGHT_ANGLE = 90;
    private static final int MOST_LOOKED_AT = 400;

    private Walls() {}

    /**
     * What the walls of a drawing come to.
     *
     * @param contours all closed lines, largest first, walls with doors replaced by their faces
     * @param bands the walls with doors as they were drawn
     * @param opened faces of such walls
     * @param words what was concluded, one sentence each
     */
    record Found(List<Contour> contours, List<Contour> bands, List<Contour> opened, List<String> words) {}

    /** Replaces walls with doors by their faces. */
    static Found opened(List<Contour> contours) {
        List<Contour> bands =
                contours.stream().limit(MOST_LOOKED_AT).filter(Walls::isBand).toList();
        List<End> ends = new ArrayList<>();
        for (int i = 0; i < bands.size(); i++) {
            ends.addAll(ends(bands.get(i), i));
        }
        List<Door> doors = doors(ends);
        Set<Integer> used = new TreeSet<>();
        doors.forEach(d -> used.addAll(List.of(d.a.band, d.b.band)));
        List<Contour> faces = faces(bands, used, doors);
        if (faces.size() < 2) {
            return new Found(contours, List.of(), List.of(), List.of());
        }
        List<Contour> taken = used.stream().map(bands::get).toList();
        List<Contour> all = new ArrayList<>(contours);
        all.removeAll(taken);
        all.addAll(faces);
        all.sort(Comparator.comparingDouble(Contour::weight).reversed());
        return new Found(all, taken, faces, List.of(words(doors)));
    }

    private static String words(List<Door> doors) {
        String thick = spread(doors.stream()
                .flatMapToDouble(d -> DoubleStream.of(d.a.width(), d.b.width()))
                .toArray());
        String wide = doors.stream()
                .map(d -> FloorReading.n(Math.rint(d.width() * 10) / 10) + " mm at " + FloorReading.shown(d.a.to))
                .collect(Collectors.joining(", "));
        return "a closed line is a wall " + thick + " thick with " + (doors.size() == 1 ? "an opening" : "openings")
                + " of " + wide + ", which " + (doors.size() == 1 ? "was" : "were") + " closed straight";
    }

    /** An end of a wall: the side from {@code from} to {@code to}, number {@code side} of a band. */
    private record End(int band, int side, Point from, Point to) {
        double width() {
            return from.distance(to);
        }

        double outward() {
            return from.angleTo(to) - RIGHT_ANGLE;
        }

        Point middle() {
            return new Point((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
        }
    }

    /** Two ends that face each other. */
    private record Door(End a, End b) {
        double width() {
            return a.middle().distance(b.middle());
        }
    }

    private static boolean isBand(Contour c) {
        double around = c.box().width() * c.box().height();
        return around >= LEAST_ROOM
                && c.area() < 0.5 * around
                && c.path().vertices().size() >= 4
                && c.crossing().isEmpty()
                && c.polygon().buffer(-MOST_THICK / 2).isEmpty();
    }

    private static List<End> ends(Contour band, int number) {
        List<Vertex> v = band.path().vertices();
        int n = v.size();
        List<End> ends = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Point a = v.get(i).point();
            Point b = v.get((i + 1) % n).point();
            double width = a.distance(b);
            boolean straight = v.get(i).bulge() == 0
                    && v.get((i + n - 1) % n).bulge() == 0
                    && v.get((i + 1) % n).bulge() == 0;
            if (straight && width >= LEAST_THICK && width <= MOST_THICK) {
                double before = turn(v.get((i + n - 1) % n).point(), a, b);
                double after = turn(a, b, v.get((i + 2) % n).point());
                if (Math.abs(before - RIGHT_ANGLE) < 30 && Math.abs(after - RIGHT_ANGLE) < 30) {
                    ends.add(new End(number, i, a, b));
                }
            }
        }
        return ends;
    }

    private static double turn(Point a, Point b, Point c) {
        return Math.IEEEremainder(b.angleTo(c) - a.angleTo(b), 360);
    }

    /** Pairs of ends that face each other, nearest first. */
    private static List<Door> doors(List<End> ends) {
        List<Door> pairs = new ArrayList<>();
        for (int i = 0; i < ends.size(); i++) {
            for (int j = i + 1; j < ends.size(); j++) {
                Door door = new Door(ends.get(i), ends.get(j));
                if (faces(door.a, door.b) && faces(door.b, door.a) && door.width() <= WIDEST_DOOR) {
                    pairs.add(door);
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Door::width));
        List<Door> doors = new ArrayList<>();
        Set<End> taken = new HashSet<>();
        for (Door d : pairs) {
            if (!taken.contains(d.a) && !taken.contains(d.b)) {
                taken.addAll(List.of(d.a, d.b));
                doors.add(d);
            }
        }
        return doors;
    }

    private static boolean faces(End a, End b) {
        double there = a.middle().angleTo(b.middle());
        double across = Math.abs(Math.IEEEremainder(there - a.outward(), 360));
        double against = Math.abs(Math.IEEEremainder(a.outward() - b.outward() - 180, 360));
        return across < 2 * ASKEW && against < ASKEW && a.middle().distance(b.middle()) > LEAST_THICK;
    }

    /** Follows the bands round, across each opening to the facing end; what is enclosed are the faces. */
    private static List<Contour> faces(List<Contour> bands, Set<Integer> used, List<Door> doors) {
        List<Contour> faces = new ArrayList<>();
        Set<List<Integer>> seen = new HashSet<>();
        for (int band : used) {
            int n = bands.get(band).path().vertices().size();
            for (int i = 0; i < n; i++) {
                if (endAt(doors, band, i) == null && seen.add(List.of(band, i))) {
                    ring(bands, doors, band, i, seen).ifPresent(faces::add);
                }
            }
        }
        return faces;
    }

    private static Optional<Contour> ring(
            List<Contour> bands, List<Door> doors, int firstBand, int firstSide, Set<List<Integer>> seen) {
        List<Vertex> ring = new ArrayList<>();
        int most = 2 * bands.stream().mapToInt(c -> c.path().vertices().size()).sum();
        int band = firstBand;
        int side = firstSide;
        do {
            List<Vertex> v = bands.get(band).path().vertices();
            ring.add(v.get(side));
            int next = (side + 1) % v.size();
            End facing = endAt(doors, band, next);
            if (facing != null) {
                Vertex last = v.get(next);
                ring.add(new Vertex(last.x(), last.y(), 0));
                band = facing.band;
                next = (facing.side + 1) % bands.get(band).path().vertices().size();
            }
            side = next;
            seen.add(List.of(band, side));
        } while (!(band == firstBand && side == firstSide) && ring.size() <= most);
        return Contour.of(
                        bands.get(firstBand).layer(), ring, bands.get(firstBand).curved())
                .filter(c -> c.area() >= LEAST_ROOM / 2);
    }

    /** The end that faces the side of a band across an opening; null if that side is no end of a door. */
    private static End endAt(List<Door> doors, int band, int side) {
        for (Door d : doors) {
            if (d.a.band == band && d.a.side == side) {
                return d.b;
            }
            if (d.b.band == band && d.b.side == side) {
                return d.a;
            }
        }
        return null;
    }

    /** How thick the wall between two faces is, least and most, mm; empty where they are no faces of one wall. */
    static Optional<double[]> thickness(Contour outer, Contour inner) {
        if (!outer.boxCovers(inner) || inner.area() < 0.5 * outer.area()) {
            return Optional.empty();
        }
        Polygon a = outer.polygon();
        Polygon b = inner.polygon();
        if (!a.isValid() || !b.isValid() || !a.covers(b)) {
            return Optional.empty();
        }
        double least = a.getExteriorRing().distance(b.getExteriorRing());
        Geometry band = a.difference(b);
        if (least < LEAST_THICK || !band.buffer(-MOST_THICK / 2 - 0.5).isEmpty()) {
            return Optional.empty();
        }
        double most = least;
        for (Shape part : outer.path().parts()) {
            Point p = middle(part);
            most = Math.max(most, b.distance(b.getFactory().createPoint(new Coordinate(p.x(), p.y()))));
        }
        return Optional.of(new double[] {least, most});
    }

    private static Point middle(Shape part) {
        if (part instanceof Arc arc) {
            return arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() / 2);
        }
        return part.extent().centre();
    }

    /** The least and the most of some lengths, in words. */
    static String spread(double... lengths) {
        double least = DoubleStream.of(lengths).min().orElse(0);
        double most = DoubleStream.of(lengths).max().orElse(0);
        String from = FloorReading.n(Math.rint(least * 10) / 10);
        String to = FloorReading.n(Math.rint(most * 10) / 10);
        return from.equals(to) ? from + " mm" : from + " to " + to + " mm";
    }
}
