package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.job.Point;

/**
 * Finds the parts of boards that were cut before and serve as they are: at the same place, with the same edge, openings,
 * grooves and deepened places.
 */
public final class SameParts {
    /** Where two parts differ by no strip wider than this they are the same, mm: what drawings and cutters are held to. */
    private static final double SAME = 0.05;

    private static final int QUARTER = 30;

    private SameParts() {}

    /** For each part of a layer the one cut before that serves for it, none for two of them. */
    public static List<Optional<Part>> of(BoardsProblem problem, LayerPlan layer) {
        List<Part> left = new ArrayList<>(problem.before(layer.layer())
                .filter(b -> b.isRouted(problem.making().depth()))
                .map(CutLayer::parts)
                .orElse(List.of()));
        List<Optional<Part>> all = new ArrayList<>();
        for (Part part : layer.parts()) {
            Optional<Part> same = left.stream().filter(p -> same(p, part)).findFirst();
            same.ifPresent(left::remove);
            all.add(same);
        }
        return all;
    }

    /** Area of what serves as it is, mm2. */
    static double kept(BoardsProblem problem, LayerPlan layer) {
        return of(problem, layer).stream()
                .flatMap(Optional::stream)
                .mapToDouble(SameParts::area)
                .sum();
    }

    /** Area of a part within its edge and outside its openings, grooves taken as full, mm2. */
    public static double area(Part part) {
        return wood(part).getArea();
    }

    /** Whether one part can lie in the place of another. */
    static boolean same(Part a, Part b) {
        Envelope here = Region.polygon(a.edge()).getEnvelopeInternal();
        Envelope there = Region.polygon(b.edge()).getEnvelopeInternal();
        boolean near = Math.abs(here.getMinX() - there.getMinX()) < SAME
                && Math.abs(here.getMaxX() - there.getMaxX()) < SAME
                && Math.abs(here.getMinY() - there.getMinY()) < SAME
                && Math.abs(here.getMaxY() - there.getMaxY()) < SAME;
        return near
                && same(wood(a), wood(b))
                && same(all(a.pockets()), all(b.pockets()))
                && same(all(a.ramps()), all(b.ramps()));
    }

    /** Whether two shapes differ by thin strips alone. */
    private static boolean same(Geometry a, Geometry b) {
        Geometry apart = OverlayNGRobust.overlay(a, b, OverlayNG.SYMDIFFERENCE);
        return apart.buffer(-SAME / 2).isEmpty();
    }

    private static Geometry wood(Part part) {
        Geometry wood = Region.polygon(part.edge()).buffer(0);
        Geometry open = all(part.openings());
        for (Round r : part.rounds()) {
            Geometry disc = Region.disc(r, r.radius(), QUARTER);
            open = OverlayNGRobust.overlay(open, disc, OverlayNG.UNION);
        }
        return OverlayNGRobust.overlay(wood, open, OverlayNG.DIFFERENCE);
    }

    private static Geometry all(List<List<Point>> rings) {
        Geometry all = Region.FACTORY.createPolygon();
        for (List<Point> ring : rings) {
            all = OverlayNGRobust.overlay(all, Region.polygon(ring).buffer(0), OverlayNG.UNION);
        }
        return all;
    }
}
