package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.boards.FixingPlan.Screw;
import org.runbend.optimizer.boards.FixingProblem;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * Holds the screws of a cover against what was asked, one distance at a time: in wood or a support and in their board, off pipe,
 * slots, conduit, openings and what lies below, no deeper than what holds them; and the map of where nobody may screw.
 */
public final class FixingVerifier {
    /** What distances may be out, mm. */
    private static final double TOLERANCE = 0.05;

    /** Places that the boards are looked at in, mm apart; another number than the placing's. */
    private static final double GRID = 37;

    private static final int QUARTER = 64;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final FixingProblem problem;
    private final FixingPlan plan;
    private final Findings findings = new Findings();
    private final List<Geometry> pipes;
    private final List<Geometry> slots;

    private FixingVerifier(FixingPlan plan) {
        this.problem = plan.problem();
        this.plan = plan;
        this.pipes = problem.loops().stream().map(l -> (Geometry) Chords.of(l)).toList();
        this.slots = problem.loops().stream()
                .flatMap(l -> l.slots().stream())
                .map(GroundShapes::slot)
                .toList();
    }

    /** What is wrong with a plan; nothing if it is as it should be. */
    public static List<Finding> verify(FixingPlan plan) {
        FixingVerifier verifier = new FixingVerifier(plan);
        boolean screwed = plan.fixing() == CoverFixing.SCREW;
        verifier.findings.unless(
                screwed || plan.screws().isEmpty(),
                "%d screws in a cover without screws",
                plan.screws().size());
        if (screwed) {
            verifier.length();
            plan.screws().forEach(verifier::screw);
            verifier.apart();
            verifier.reach();
        }
        verifier.map();
        return verifier.findings.all();
    }

    private void length() {
        double length = plan.length().orElse(Double.NaN);
        double deepest = problem.size().cover() + problem.size().under();
        findings.unless(
                length > problem.size().cover() && length < deepest,
                "screws of %.1f mm, the cover is %.1f mm and with what holds them %.1f mm",
                length,
                problem.size().cover(),
                deepest);
    }

    private void screw(Screw s) {
        Geometry at = Chords.spot(s.at());
        Finding.Spot spot = new Finding.Spot(s.at().x(), s.at().y());
        for (Geometry pipe : pipes) {
            double away = pipe.distance(at);
            findings.unless(away >= FixingProblem.FROM_PIPE - TOLERANCE, "a screw %.2f mm from the pipe%s", away, spot);
        }
        for (Geometry slot : slots) {
            double off = slot.distance(at);
            findings.unless(off >= FixingProblem.FROM_THINGS - TOLERANCE, "a screw %.2f mm from a slot%s", off, spot);
        }
        for (List<Point> region : problem.below()) {
            double off = Chords.region(region).distance(at);
            findings.unless(
                    off >= FixingProblem.FROM_THINGS - TOLERANCE,
                    "a screw %.2f mm from what lies under the floor%s",
                    off,
                    spot);
        }
        for (Cutout c : problem.cutouts()) {
            double off = Chords.region(c.edge()).distance(at);
            findings.unless(
                    off >= FixingProblem.FROM_THINGS - TOLERANCE, "a screw %.2f mm from %s%s", off, c.name(), spot);
        }
        for (int i = 1; i < problem.conduit().size(); i++) {
            double off = GroundShapes.line(
                            problem.conduit().get(i - 1), problem.conduit().get(i))
                    .distance(at);
            findings.unless(
                    off >= FixingProblem.FROM_CONDUIT - TOLERANCE, "a screw %.2f mm from the conduit%s", off, spot);
        }
        boolean inBoard = problem.cover().stream()
                .filter(p -> p.label().equals(s.board()))
                .anyMatch(p -> isIn(shape(p), at, FixingProblem.FROM_EDGE));
        findings.unless(
                inBoard, "a screw of board %s is not %.0f mm within it%s", s.board(), FixingProblem.FROM_EDGE, spot);
        boolean held = problem.base().stream().anyMatch(p -> isIn(shape(p), at, FixingProblem.FROM_BASE_EDGE))
                || (problem.base().isEmpty() && problem.supports().stream().anyMatch(b -> holds(b, at)));
        findings.unless(
                held, "a screw is not %.0f mm within anything that holds it%s", FixingProblem.FROM_BASE_EDGE, spot);
    }

    private static boolean holds(Support support, Geometry at) {
        return isIn(
                GroundShapes.strip(support.from(), support.to(), support.width()), at, FixingProblem.FROM_BASE_EDGE);
    }

    private static boolean isIn(Geometry shape, Geometry at, double inset) {
        return shape.covers(at) && shape.getBoundary().distance(at) >= inset - TOLERANCE;
    }

    private void apart() {
        for (int i = 0; i < plan.screws().size(); i++) {
            for (int k = 0; k < i; k++) {
                Screw a = plan.screws().get(i);
                Screw b = plan.screws().get(k);
                double apart = Chords.spot(a.at()).distance(Chords.spot(b.at()));
                findings.unless(
                        !a.board().equals(b.board()) || apart >= FixingProblem.LEAST_APART - TOLERANCE,
                        "two screws of board %s lie %.2f mm apart",
                        a.board(),
                        apart);
            }
        }
    }

    /** No place of a board is farther from a screw of its board than is claimed. */
    private void reach() {
        for (Part part : problem.cover()) {
            Geometry shape = shape(part);
            if (isLid(shape)) {
                continue;
            }
            Envelope box = shape.getEnvelopeInternal();
            double most = 0;
            for (double x = box.getMinX(); x <= box.getMaxX(); x += GRID) {
                for (double y = box.getMinY(); y <= box.getMaxY(); y += GRID) {
                    double away = nearest(part, x, y);
                    if (away > most && shape.covers(FACTORY.createPoint(new Coordinate(x, y)))) {
                        most = away;
                    }
                }
            }
            findings.unless(
                    Double.isInfinite(most) || most <= plan.farthest() + TOLERANCE,
                    "a place of board %s lies %.1f mm from its next screw, %.1f mm are claimed",
                    part.label(),
                    most,
                    plan.farthest());
        }
    }

    private double nearest(Part part, double x, double y) {
        return plan.screws().stream()
                .filter(s -> s.board().equals(part.label()))
                .mapToDouble(s -> Math.hypot(s.at().x() - x, s.at().y() - y))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private boolean isLid(Geometry shape) {
        return problem.cutouts().stream()
                .anyMatch(c ->
                        c.filling() == Filling.LID && Chords.region(c.edge()).covers(shape));
    }

    /** The map holds all that is nearer to pipe, slots and what lies below than is asked. */
    private void map() {
        Geometry map = FACTORY.createPolygon();
        for (List<Point> ring : plan.noScrew()) {
            map = map.symDifference(Chords.region(ring).buffer(0));
        }
        Geometry asked = FACTORY.createPolygon();
        Geometry floor = FACTORY.createPolygon();
        for (Part p : problem.cover()) {
            floor = floor.union(Chords.region(p.edge()));
        }
        for (Geometry pipe : pipes) {
            asked = asked.union(pipe.buffer(FixingProblem.FROM_PIPE, 16));
        }
        for (Geometry slot : slots) {
            asked = asked.union(slot.buffer(FixingProblem.FROM_THINGS, 16));
        }
        for (List<Point> region : problem.below()) {
            asked = asked.union(Chords.region(region).buffer(FixingProblem.FROM_THINGS, 16));
        }
        double open = asked.intersection(floor).difference(map).getArea();
        findings.unless(open < 1, "the map of where nobody may screw leaves %.0f mm2 of it open", open);
    }

    private static Geometry shape(Part part) {
        Geometry shape = Chords.region(part.edge());
        for (List<Point> opening : part.openings()) {
            shape = shape.difference(Chords.region(opening));
        }
        for (Round r : part.rounds()) {
            shape = shape.difference(Chords.spot(r.centre()).buffer(r.radius(), QUARTER));
        }
        return shape;
    }
}
