package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.job.Point;

/**
 * Holds the boards of a floor against what was asked, from areas and distances alone: parts lie on the floor with the air
 * asked for and fill it, grooves lie where they were planned, no joint runs along one, and each part is cut whole and
 * unmirrored from its stock board. Shares no line with the splitting.
 */
public final class BoardsVerifier {
    /** What lengths may be out, mm. */
    private static final double TOLERANCE = 0.05;

    private static final int QUARTER = 64;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private BoardsVerifier() {}

    /** What is wrong with a plan; nothing if it is as it should be. */
    public static List<Finding> verify(BoardsPlan plan) {
        Findings findings = new Findings();
        for (LayerPlan layer : plan.layers()) {
            floor(plan.problem(), layer, findings);
            stock(plan.problem(), layer, findings);
            if (layer.layer().role() == Role.ROUTED) {
                grooves(plan.problem(), layer, findings);
            }
        }
        findings.unless(plan.layers().size() == plan.problem().layers().size(), "a layer has no boards");
        plan.problem().packers().forEach(p -> packer(plan, p, findings));
        return findings.all();
    }

    /** A packer is as high as what it stands in the place of, and nothing of that is there. */
    private static void packer(BoardsPlan plan, BoardsProblem.Packer packer, Findings findings) {
        Geometry solid = Chords.region(packer.edge());
        double height = 0;
        for (LayerPlan layer : plan.layers()) {
            if (layer.layer().role() != Role.COVER) {
                height += layer.layer().thickness();
                for (Part part : layer.parts()) {
                    findings.unless(
                            shape(part).distance(solid) > 0,
                            "board %s lies where the packer of %s stands",
                            part.label(),
                            packer.name());
                }
            }
        }
        findings.unless(
                Math.abs(height - packer.height()) < TOLERANCE,
                "the packer of %s is %.1f mm high, what it stands in is %.1f mm",
                packer.name(),
                packer.height(),
                height);
    }

    private static void floor(BoardsProblem problem, LayerPlan layer, Findings findings) {
        Geometry outline = Chords.region(problem.outline());
        double air = layer.layer().perimeterGap() + problem.making().tolerance();
        double over = problem.making().scribe().values().stream()
                .mapToDouble(d -> d)
                .max()
                .orElse(0);
        Geometry room = over > 0 ? outline.buffer(over * 2, QUARTER) : outline.buffer(TOLERANCE - air, QUARTER);
        List<Geometry> parts = layer.parts().stream().map(BoardsVerifier::shape).toList();
        double covered = 0;
        for (int i = 0; i < parts.size(); i++) {
            Part part = layer.parts().get(i);
            covered += parts.get(i).getArea();
            findings.unless(
                    room.covers(parts.get(i)), "board %s comes nearer to a wall than %.1f mm", part.label(), air);
            for (Cutout c : problem.cutouts()) {
                double away = air(parts.get(i), c);
                findings.unless(
                        !c.through().contains(layer.layer().role()) || away >= c.gap() - TOLERANCE,
                        "board %s lies %.2f mm from %s, %.2f are asked",
                        part.label(),
                        away,
                        c.name(),
                        c.gap());
            }
            for (int k = 0; k < i; k++) {
                double apart = parts.get(i).distance(parts.get(k));
                findings.unless(
                        apart >= problem.making().jointGap() - 1e-6,
                        "boards %s and %s lie %.3f mm apart, %.3f are asked",
                        part.label(),
                        layer.parts().get(k).label(),
                        apart,
                        problem.making().jointGap());
            }
        }
        if (over == 0) {
            Geometry open = outline.buffer(-air, QUARTER);
            for (Cutout c : problem.cutouts()) {
                if (c.through().contains(layer.layer().role())) {
                    Geometry edge = Chords.region(c.edge());
                    open = open.difference(edge.buffer(c.gap(), QUARTER));
                    if (c.filling() == Filling.LID) {
                        open = open.union(edge.buffer(-c.gap(), QUARTER));
                    }
                }
            }
            double joints = layer.joints().stream()
                    .mapToDouble(j -> j.from().distance(j.to()))
                    .sum();
            // chords of round things and cut corners of square ones: their perimeter by what they are out
            double forgiven = joints * problem.making().jointGap() + 0.001 * open.getArea() + 100;
            findings.unless(
                    open.getArea() - covered <= forgiven,
                    "the boards leave %.0f mm2 of the floor open, joints are %.0f",
                    open.getArea() - covered,
                    forgiven);
        }
    }

    /** From a part to the edge of an opening; into an opening only what is its lid may reach. */
    private static double air(Geometry part, Cutout c) {
        Geometry edge = Chords.region(c.edge());
        boolean lid = c.filling() == Filling.LID && edge.covers(part);
        return part.distance(lid ? edge.getBoundary() : edge);
    }

    private static void stock(BoardsProblem problem, LayerPlan layer, Findings findings) {
        findings.unless(
                layer.bound() <= layer.triedBound() && layer.triedBound() <= layer.boards(),
                "bounds of %d and %d boards, %d are bought",
                layer.bound(),
                layer.triedBound(),
                layer.boards());
        double trim = problem.making().trim();
        Geometry usable = FACTORY.createPolygon(new Coordinate[] {
            new Coordinate(trim, trim),
            new Coordinate(layer.sheet().length() - trim, trim),
            new Coordinate(layer.sheet().length() - trim, layer.sheet().width() - trim),
            new Coordinate(trim, layer.sheet().width() - trim),
            new Coordinate(trim, trim)
        });
        double sheet = layer.sheet().length() * layer.sheet().width();
        List<Geometry> placed = new ArrayList<>();
        List<Geometry> cut = new ArrayList<>();
        double area = 0;
        for (Part part : layer.parts()) {
            AffineTransformation way = onBoard(part);
            placed.add(way.transform(shape(part)));
            Geometry tool = FACTORY.createPolygon();
            for (List<Point> pocket : part.pockets()) {
                tool = tool.union(way.transform(Chords.region(pocket)));
            }
            cut.add(tool);
            area += shape(part).getArea();
        }
        findings.unless(area <= layer.boards() * sheet, "the parts are larger than the %d boards", layer.boards());
        for (int i = 0; i < placed.size(); i++) {
            Part a = layer.parts().get(i);
            findings.unless(
                    a.spot().board() >= 0 && a.spot().board() < layer.boards(),
                    "board %s lies on no stock board",
                    a.label());
            findings.unless(
                    usable.buffer(1e-6).covers(placed.get(i)), "board %s juts out of its stock board", a.label());
            double width = Math.min(
                    placed.get(i).getEnvelopeInternal().getWidth(),
                    placed.get(i).getEnvelopeInternal().getHeight());
            findings.unless(
                    width >= problem.making().leastPart() - TOLERANCE,
                    "board %s is %.1f mm wide, %.1f are needed to hold it",
                    a.label(),
                    width,
                    problem.making().leastPart());
            for (int k = 0; k < placed.size(); k++) {
                Part b = layer.parts().get(k);
                if (k == i || b.spot().board() != a.spot().board()) {
                    continue;
                }
                double apart = placed.get(i).distance(placed.get(k));
                findings.unless(
                        apart >= problem.making().between(layer.layer().role()) - 1e-6,
                        "boards %s and %s lie %.3f mm apart on their stock board",
                        a.label(),
                        b.label(),
                        apart);
                findings.unless(
                        cut.get(i).isEmpty() || !cut.get(i).intersects(placed.get(k)),
                        "a groove of board %s runs out into board %s",
                        a.label(),
                        b.label());
            }
        }
    }

    private static void grooves(BoardsProblem problem, LayerPlan layer, Findings findings) {
        Geometry planned = FACTORY.createPolygon();
        for (List<Point> ring : problem.grooves()) {
            planned = planned.union(Chords.region(ring).buffer(0));
        }
        Geometry joints = FACTORY.createGeometryCollection();
        for (BoardsPlan.Joint j : layer.joints()) {
            Geometry line = GroundShapes.line(j.from(), j.to());
            joints = joints.isEmpty() ? line : joints.union(line);
            Geometry inside = planned.intersection(line);
            for (int i = 0; i < inside.getNumGeometries(); i++) {
                findings.unless(
                        inside.getGeometryN(i).getLength()
                                <= 1.2 * problem.making().bendGroove(),
                        "a joint runs along a groove for %.1f mm",
                        inside.getGeometryN(i).getLength());
            }
        }
        Geometry flares = joints.isEmpty()
                ? joints
                : joints.buffer(
                        BoardsProblem.Making.FLARE_LENGTH + problem.making().jointGap(), QUARTER);
        Geometry wide = planned.buffer(BoardsProblem.Making.FLARE + TOLERANCE, QUARTER);
        for (Part part : layer.parts()) {
            Geometry shape = shape(part);
            Geometry cut = FACTORY.createPolygon();
            for (List<Point> pocket : part.pockets()) {
                cut = cut.union(Chords.region(pocket).buffer(0));
            }
            Geometry here = cut.intersection(shape).buffer(0); // without lines where a groove and a hole only touch
            double missing = planned.intersection(shape)
                    .buffer(-TOLERANCE)
                    .difference(here)
                    .getArea();
            double beyond = here.difference(wide).getArea();
            double unasked = here.difference(flares)
                    .difference(planned.buffer(TOLERANCE))
                    .getArea();
            findings.unless(missing < 0.01, "board %s lacks %.2f mm2 of its grooves", part.label(), missing);
            findings.unless(
                    beyond < 0.01 && unasked < 0.01,
                    "board %s is cut on %.2f mm2 where no groove is",
                    part.label(),
                    Math.max(beyond, unasked));
        }
    }

    /** A part with its openings. */
    private static Geometry shape(Part part) {
        Geometry shape = Chords.region(part.edge());
        for (List<Point> opening : part.openings()) {
            shape = shape.difference(Chords.region(opening));
        }
        for (Round r : part.rounds()) {
            shape = shape.difference(FACTORY.createPoint(
                            new Coordinate(r.centre().x(), r.centre().y()))
                    .buffer(r.radius(), QUARTER));
        }
        return shape;
    }

    /** Turned by quarters, then moved so that the bounding rectangle lies at the spot: a rotation, so nothing is mirrored. */
    private static AffineTransformation onBoard(Part part) {
        Polygon edge = Chords.region(part.edge());
        AffineTransformation turn =
                AffineTransformation.rotationInstance(part.spot().quarters() * Math.PI / 2);
        org.locationtech.jts.geom.Envelope box = turn.transform(edge).getEnvelopeInternal();
        return turn.translate(part.spot().x() - box.getMinX(), part.spot().y() - box.getMinY());
    }
}
