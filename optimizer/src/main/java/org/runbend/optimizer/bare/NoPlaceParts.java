package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Heated floor on which no place of the lattice lies.
 *
 * <p>Method: what is left of the floor when bare keep-outs, unheated regions and the squares of all places are taken away;
 * of that only what is wider than 0.6 spacings and at least two squares large, as a rim of up to one spacing beside the
 * outermost runs is common on any floor.
 */
final class NoPlaceParts {
    private static final double WIDTH = 0.6;
    private static final double LEAST_SQUARES = 2;
    private static final double NOTHING = 1;

    private final FloorProblem problem;
    private final Lattice lattice;
    private final double square;

    NoPlaceParts(FloorProblem problem, Lattice lattice) {
        this.problem = problem;
        this.lattice = lattice;
        this.square = problem.spacing() * problem.spacing();
    }

    List<Part> find() {
        List<Integer> nodes = IntStream.range(0, lattice.graph().size()).boxed().toList();
        Geometry left = OverlayNGRobust.overlay(floor(), new Cells(lattice).of(nodes), OverlayNG.DIFFERENCE);
        double half = WIDTH / 2 * problem.spacing();
        Geometry wide = OverlayNGRobust.overlay(left.buffer(-half).buffer(half), left, OverlayNG.INTERSECTION);
        Geometry allowed = allowed();
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < wide.getNumGeometries(); i++) {
            Geometry piece = wide.getGeometryN(i);
            if (piece.getArea() >= LEAST_SQUARES * square) {
                parts.add(part(piece, allowed));
            }
        }
        return parts;
    }

    private Geometry floor() {
        Geometry floor = FloorShapes.polygon(problem.outline());
        for (KeepOut k : problem.keepOuts()) {
            floor = OverlayNGRobust.overlay(floor, FloorShapes.bare(k.bare()), OverlayNG.DIFFERENCE);
        }
        for (Shape.Polygon cold : problem.unheated()) {
            floor = OverlayNGRobust.overlay(floor, FloorShapes.polygon(cold.corners()), OverlayNG.DIFFERENCE);
        }
        return floor;
    }

    /** Where the centreline may lie. */
    private Geometry allowed() {
        Geometry allowed = FloorShapes.polygon(problem.outline()).buffer(-problem.edge(), 32);
        for (KeepOut k : problem.keepOuts()) {
            allowed = OverlayNGRobust.overlay(
                    allowed, FloorShapes.bare(k.bare()).buffer(k.clearance(), 32), OverlayNG.DIFFERENCE);
        }
        return allowed;
    }

    private Part part(Geometry piece, Geometry allowed) {
        boolean narrow =
                OverlayNGRobust.overlay(piece, allowed, OverlayNG.INTERSECTION).getArea() < NOTHING;
        Coordinate inside = piece.getInteriorPoint().getCoordinate();
        return new Part(
                narrow ? Reason.TOO_NARROW : Reason.BETWEEN_PLACES,
                (int) Math.rint(piece.getArea() / square),
                1,
                new Point(inside.x, inside.y),
                piece,
                narrow ? narrow(piece) : between(),
                List.of());
    }

    private String narrow(Geometry piece) {
        List<String> near = new ArrayList<>();
        Geometry outline = FloorShapes.polygon(problem.outline()).getBoundary();
        if (outline.isWithinDistance(piece, problem.edge())) {
            near.add(String.format(Locale.ROOT, "%.0f mm to the outline (edge)", problem.edge()));
        }
        for (KeepOut k : problem.keepOuts()) {
            if (FloorShapes.bare(k.bare()).isWithinDistance(piece, k.clearance())) {
                near.add(String.format(Locale.ROOT, "%.0f mm to %s (clearance)", k.clearance(), k.name()));
            }
        }
        return ": pipe would come nearer there than " + near.stream().limit(3).collect(Collectors.joining(" or "))
                + ".";
    }

    private String between() {
        return String.format(
                Locale.ROOT,
                ": pipe could lie on some of it, but the places for pipe, %.0f mm apart, fall beside it.",
                problem.spacing());
    }
}
