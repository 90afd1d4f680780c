package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.job.Point;

/**
 * Sweeps bush and cutter through the slots of a guide: the axis goes wherever the bush goes, which is the slot shrunk by the
 * bush's radius, and the cutter takes what lies within its radius of the axis. That must be the channel of the slot's middle
 * line, no more and no less.
 */
public final class GuideVerifier {
    /** What a guide may be out, mm: half the play of any pipe, and more than the chords are. */
    private static final double TOLERANCE = 0.05;

    /** What must stay of the plate between two slots, mm. */
    private static final double LEAST_PLATE = 10;

    // 64 chords a quarter: on a radius of 100 mm out by 100 (1 - cos 0.35 degrees) = 0.002 mm
    private static final int QUARTER = 64;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private GuideVerifier() {}

    /** What is wrong with a guide; nothing if it is as it should be. */
    public static List<Finding> verify(GuidePlate plate) {
        Findings findings = new Findings();
        List<Polygon> holes = new ArrayList<>();
        for (GuidePlate.Slot slot : plate.slots()) {
            Polygon edge = region(slot.contour());
            holes.add(edge);
            sweep(plate, slot, edge, findings);
        }
        plate.handHoles().forEach(h -> holes.add(region(h)));
        keepApart(plate, holes, findings);
        tools(plate, findings);
        return findings.all();
    }

    /** Grown or shrunk, without the smoothing of a hundredth of the distance that the library does by itself. */
    private static Geometry grown(Geometry shape, double by) {
        BufferParameters fine = new BufferParameters(QUARTER);
        fine.setSimplifyFactor(1e-5);
        return BufferOp.bufferOp(shape, by, fine);
    }

    private static void sweep(GuidePlate plate, GuidePlate.Slot slot, Polygon edge, Findings findings) {
        Geometry axis = grown(edge, -plate.bush().outer() / 2);
        boolean whole = axis instanceof Polygon && !axis.isEmpty();
        // a slot that the bush fills leaves its axis a line; then the cutter is as wide as the channel
        Geometry swept = whole ? grown(axis, plate.cutter() / 2) : grown(way(slot), plate.cutter() / 2);
        boolean fills = Math.abs(slot.channel() - plate.cutter()) < TOLERANCE;
        findings.unless(whole || fills, "the bush does not get through a slot of the guide%s", spot(slot.entry()));
        Geometry channel = grown(way(slot), slot.channel() / 2);
        double over = DiscreteHausdorffDistance.distance(swept, channel);
        double missing = DiscreteHausdorffDistance.distance(channel, swept);
        double away = Math.max(over, missing);
        findings.unless(
                away <= TOLERANCE,
                "cutter and bush in a slot of the guide miss the edge of the channel by %.3f mm, %.3f are allowed%s",
                away,
                TOLERANCE,
                spot(slot.entry()));
        findings.unless(
                grown(edge, TOLERANCE - plate.bush().outer() / 2)
                        .intersects(FACTORY.createPoint(
                                new Coordinate(slot.entry().x(), slot.entry().y()))),
                "the bush cannot be set into a slot of the guide%s",
                spot(slot.entry()));
    }

    private static void keepApart(GuidePlate plate, List<Polygon> holes, Findings findings) {
        Polygon body = FACTORY.createPolygon(new Coordinate[] {
            new Coordinate(0, 0),
            new Coordinate(plate.width(), 0),
            new Coordinate(plate.width(), plate.height()),
            new Coordinate(0, plate.height()),
            new Coordinate(0, 0)
        });
        for (int i = 0; i < holes.size(); i++) {
            Polygon hole = holes.get(i);
            double edge = body.contains(hole) ? body.getExteriorRing().distance(hole) : -1;
            findings.unless(
                    edge >= LEAST_PLATE,
                    "a slot of the guide lies %.1f mm from its edge, %.1f are needed",
                    edge,
                    LEAST_PLATE);
            for (int k = 0; k < i; k++) {
                double between = holes.get(k).distance(hole);
                findings.unless(
                        between >= LEAST_PLATE,
                        "two slots of the guide leave %.1f mm between them, %.1f are needed",
                        between,
                        LEAST_PLATE);
            }
        }
    }

    private static void tools(GuidePlate plate, Findings findings) {
        double air = plate.bush().bore() - plate.cutter();
        findings.unless(air >= 1 - 1e-9, "the cutter has %.2f mm of air in the bush, %.2f are needed", air, 1.0);
        findings.unless(
                plate.bush().collar() < plate.problem().thickness(),
                "the collar reaches %.1f mm below the base, through a guide of %.1f",
                plate.bush().collar(),
                plate.problem().thickness());
        findings.unless(
                plate.cutter() <= plate.problem().groove().width() + 1e-9,
                "a cutter of %.1f mm is thicker than a groove of %.1f",
                plate.cutter(),
                plate.problem().groove().width());
    }

    private static Finding.Spot spot(Point p) {
        return new Finding.Spot(p.x(), p.y());
    }

    private static Geometry way(GuidePlate.Slot slot) {
        List<Coordinate> all = new ArrayList<>();
        for (Element e : slot.way()) {
            if (e.length() == 0) {
                return FACTORY.createPoint(new Coordinate(e.from().x(), e.from().y()));
            }
            LineString chords = Chords.of(e);
            for (Coordinate c : chords.getCoordinates()) {
                if (all.isEmpty() || all.get(all.size() - 1).distance(c) > 1e-6) {
                    all.add(c);
                }
            }
        }
        return FACTORY.createLineString(all.toArray(Coordinate[]::new));
    }

    /** A closed line with bulges as chords of half a degree: centre and radius by the formula of the bulge. */
    private static Polygon region(List<Corner> corners) {
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i).at();
            Point b = corners.get((i + 1) % corners.size()).at();
            double bulge = corners.get(i).bulge();
            ring.add(new Coordinate(a.x(), a.y()));
            if (bulge != 0) {
                double k = (1 - bulge * bulge) / (4 * bulge);
                double cx = (a.x() + b.x()) / 2 - (b.y() - a.y()) * k;
                double cy = (a.y() + b.y()) / 2 + (b.x() - a.x()) * k;
                double sweep = 4 * Math.atan(bulge);
                int steps = (int) Math.max(2, Math.ceil(Math.abs(Math.toDegrees(sweep)) * 2));
                double start = Math.atan2(a.y() - cy, a.x() - cx);
                double radius = Math.hypot(a.x() - cx, a.y() - cy);
                for (int s = 1; s < steps; s++) {
                    double angle = start + sweep * s / steps;
                    ring.add(new Coordinate(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)));
                }
            }
        }
        ring.add(ring.get(0).copy());
        return FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
    }
}
