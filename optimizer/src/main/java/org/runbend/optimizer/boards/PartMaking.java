package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * What is cut into a part: the grooves as far as they lie on it, wider beside joints, and run out beyond the edge so that a
 * round cutter leaves no corner there.
 */
final class PartMaking {
    private final BoardsProblem problem;
    private final Layer layer;
    private final Geometry grooves;
    private final List<Crossing> crossings = new ArrayList<>();

    /** Where a groove crosses a joint: the place, the direction of the pipe, half the width there. */
    private record Crossing(Point at, double ux, double uy, double half, boolean straight, boolean upright) {}

    PartMaking(BoardsProblem problem, Layer layer, Geometry grooves, List<Joint> joints) {
        this.problem = problem;
        this.layer = layer;
        this.grooves = grooves;
        if (layer.role() == Role.ROUTED) {
            joints.forEach(this::cross);
        }
    }

    /** All grooves with their flares, as they are to be in the floor. */
    static Geometry flared(BoardsProblem problem, Geometry grooves, List<Joint> joints, Layer layer) {
        PartMaking making = new PartMaking(problem, layer, grooves, joints);
        Geometry all = grooves;
        for (Crossing c : making.crossings) {
            all = all.union(making.flare(c));
        }
        return all;
    }

    Part part(String label, Polygon shape, Spot spot) {
        List<List<Point>> openings = new ArrayList<>();
        List<Round> rounds = new ArrayList<>();
        for (int i = 0; i < shape.getNumInteriorRing(); i++) {
            LinearRing ring = shape.getInteriorRingN(i);
            Round round = roundOf(ring);
            if (round == null) {
                openings.add(Region.corners(ring));
            } else {
                rounds.add(round);
            }
        }
        List<List<Point>> pockets = new ArrayList<>();
        List<List<Point>> ramps = new ArrayList<>();
        if (layer.role() == Role.ROUTED) {
            Geometry cut = grooves;
            Geometry inside = shape.buffer(-0.01);
            Geometry runOut = Region.FACTORY.createPolygon();
            for (Crossing c : crossings) {
                if (shape.distance(Region.FACTORY.createPoint(new Coordinate(c.at().x(), c.at().y())))
                        < problem.making().jointGap()) {
                    cut = cut.union(flare(c));
                    runOut = runOut.union(runOut(c, inside));
                }
            }
            // grooves run on over holes, as a round cutter would leave corners at their edges
            Polygon filled = Region.FACTORY.createPolygon(shape.getExteriorRing());
            Geometry mine = Region.areas(cut.intersection(filled)).union(Region.areas(runOut));
            for (Polygon p : Region.polygons(mine)) {
                pockets.add(Region.corners(p.getExteriorRing()));
            }
            for (List<Point> ramp : problem.ramps()) {
                for (Polygon p : Region.polygons(Region.polygon(ramp).intersection(filled))) {
                    ramps.add(Region.corners(p.getExteriorRing()));
                }
            }
        }
        return new Part(label, Region.corners(shape.getExteriorRing()), openings, rounds, pockets, ramps, spot);
    }

    /** The circle that an opening is, if it is one of the round cutouts, whole. */
    private Round roundOf(LinearRing ring) {
        for (Cutout c : problem.cutouts()) {
            if (c.round().isPresent() && c.through().contains(layer.role())) {
                Point m = c.round().get().centre();
                double radius = c.round().get().radius() + c.gap();
                boolean same = true;
                for (Coordinate p : ring.getCoordinates()) {
                    same &= Math.abs(p.distance(new Coordinate(m.x(), m.y())) - radius) < 1e-6;
                }
                if (same) {
                    return new Round(m, radius);
                }
            }
        }
        return null;
    }

    private void cross(Joint j) {
        Making m = problem.making();
        for (Breakdown loop : problem.loops()) {
            for (Element e : loop.pipe()) {
                if (e instanceof Element.Run run) {
                    Point at = meet(run, j);
                    if (at != null) {
                        double ux = (run.to().x() - run.from().x()) / run.length();
                        double uy = (run.to().y() - run.from().y()) / run.length();
                        double room = Math.min(at.distance(run.from()), at.distance(run.to()));
                        // nearer to a bend the groove is as wide as there, and a straight flare would leave it
                        boolean clear = room > Making.FLARE_LENGTH + m.jointGap();
                        crossings.add(new Crossing(
                                at, ux, uy, (clear ? m.groove() : m.bendGroove()) / 2, clear, isUpright(j)));
                    }
                } else {
                    bends((Element.Bend) e, j);
                }
            }
        }
    }

    static boolean isUpright(Joint j) {
        return Math.abs(j.from().x() - j.to().x()) < 1e-9;
    }

    private static Point meet(Element.Run run, Joint j) {
        double ax = run.to().x() - run.from().x();
        double ay = run.to().y() - run.from().y();
        double bx = j.to().x() - j.from().x();
        double by = j.to().y() - j.from().y();
        double cross = ax * by - ay * bx;
        if (Math.abs(cross) < 1e-9) {
            return null;
        }
        double dx = j.from().x() - run.from().x();
        double dy = j.from().y() - run.from().y();
        double t = (dx * by - dy * bx) / cross;
        double s = (dx * ay - dy * ax) / cross;
        return t >= 0 && t <= 1 && s >= 0 && s <= 1
                ? new Point(run.from().x() + t * ax, run.from().y() + t * ay)
                : null;
    }

    /** An arc crosses a line along an axis where its circle does, within its turn. */
    private void bends(Element.Bend bend, Joint j) {
        boolean upright = isUpright(j);
        double off = upright
                ? j.from().x() - bend.centre().x()
                : j.from().y() - bend.centre().y();
        if (Math.abs(off) >= bend.radius()) {
            return;
        }
        double reach = Math.sqrt(bend.radius() * bend.radius() - off * off);
        for (int side : new int[] {-1, 1}) {
            Point p = upright
                    ? new Point(j.from().x(), bend.centre().y() + side * reach)
                    : new Point(bend.centre().x() + side * reach, j.from().y());
            double along = upright ? p.y() : p.x();
            double from = upright
                    ? Math.min(j.from().y(), j.to().y())
                    : Math.min(j.from().x(), j.to().x());
            double to = upright
                    ? Math.max(j.from().y(), j.to().y())
                    : Math.max(j.from().x(), j.to().x());
            if (along >= from && along <= to && within(bend, p)) {
                double rx = (p.x() - bend.centre().x()) / bend.radius();
                double ry = (p.y() - bend.centre().y()) / bend.radius();
                crossings.add(new Crossing(p, -ry, rx, problem.making().bendGroove() / 2, false, upright));
            }
        }
    }

    private static boolean within(Element.Bend bend, Point p) {
        double start = StrictMath.atan2(
                bend.from().y() - bend.centre().y(),
                bend.from().x() - bend.centre().x());
        double angle = StrictMath.atan2(
                p.y() - bend.centre().y(), p.x() - bend.centre().x());
        double turned = Math.toDegrees(angle - start) * Math.signum(bend.turn());
        double around = ((turned % 360) + 360) % 360;
        return around <= Math.abs(bend.turn());
    }

    /** Two trapezoids, narrow away from the joint; at a bend, where the groove is wide enough, nothing. */
    private Geometry flare(Crossing c) {
        if (!c.straight()) {
            return Region.FACTORY.createPolygon();
        }
        double far = Making.FLARE_LENGTH + problem.making().jointGap() / 2;
        double wide = c.half() + Making.FLARE;
        return Region.polygon(List.of(
                place(c, -far, -c.half()),
                place(c, 0, -wide),
                place(c, far, -c.half()),
                place(c, far, c.half()),
                place(c, 0, wide),
                place(c, -far, c.half())));
    }

    private static Point place(Crossing c, double along, double left) {
        return new Point(c.at().x() + along * c.ux() - left * c.uy(), c.at().y() + along * c.uy() + left * c.ux());
    }

    /**
     * From a hundredth of a mm inside the part to as far beyond its edge as the cutter's radius asks, as wide as the groove is
     * at the edge. Where the pipe leaves the edge at a slant, a radius r touches the side that leans away last: r (1 + sine of
     * the lean) from the edge; no corner of a run-out goes farther, so that it stays within {@link Making#between}.
     */
    private Geometry runOut(Crossing c, Geometry inside) {
        double slant = c.upright() ? Math.abs(c.ux()) : Math.abs(c.uy());
        double leaning = Math.sqrt(Math.max(0, 1 - slant * slant));
        double wide = c.half() + (c.straight() ? Making.FLARE * edgeShare() : 0);
        double lean = wide * leaning / slant;
        double reach = problem.making().tool() / 2 * (1 + leaning) + 0.5;
        double beyond = reach / slant + lean;
        double back = problem.making().jointGap() / slant + lean;
        Point ahead = place(c, back + 5, 0);
        boolean inAhead = inside.covers(Region.FACTORY.createPoint(new Coordinate(ahead.x(), ahead.y())));
        double way = inAhead ? -1 : 1;
        return Region.polygon(List.of(
                        place(c, -way * back, -wide),
                        place(c, way * beyond, -wide),
                        place(c, way * beyond, wide),
                        place(c, -way * back, wide)))
                .intersection(strip(c, reach, back + beyond + 2 * wide))
                .difference(inside);
    }

    /** All that lies within a distance of the joint, for some length. */
    private static Geometry strip(Crossing c, double off, double length) {
        double x = c.upright() ? off : length;
        double y = c.upright() ? length : off;
        return Region.box(c.at().x() - x, c.at().y() - y, c.at().x() + x, c.at().y() + y);
    }

    /** How much of the flare is there at the edge of the part, half a gap from the joint's middle. */
    private double edgeShare() {
        double far = Making.FLARE_LENGTH + problem.making().jointGap() / 2;
        return 1 - problem.making().jointGap() / 2 / far;
    }
}
