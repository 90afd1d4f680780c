package org.runbend.optimizer.tape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Point;

/**
 * Ties a thing to the floor by two distances: at right angles from two straight sides that do not run alike, else from
 * a side and a corner, else from two corners. The tape must lie on the floor; only what itself lies outside is excused.
 */
final class Tying {
    /** Sides nearer to parallel than this fix a point badly: sine of 30 degrees. */
    private static final double LEAST_SINE = 0.5;

    private static final double SLACK = 0.5;
    private static final Comparator<TapeSheet.Tie> NEAREST =
            Comparator.comparingDouble(t -> Math.rint(Math.abs(t.distance())));

    private final List<TapeSheet.Corner> corners;
    private final List<TapeSheet.Side> sides;
    private final PreparedGeometry inside;

    Tying(List<TapeSheet.Corner> corners, List<TapeSheet.Side> sides, PreparedGeometry inside) {
        this.corners = corners;
        this.sides = sides;
        this.inside = inside;
    }

    TapeSheet.Thing point(String name, Point at) {
        return new TapeSheet.Thing(name, at, ties(List.of(at), at));
    }

    TapeSheet.Thing region(String name, List<Point> edge) {
        double x = edge.stream().mapToDouble(Point::x).average().orElse(0);
        double y = edge.stream().mapToDouble(Point::y).average().orElse(0);
        Point middle = new Point(x, y);
        return new TapeSheet.Thing(name, middle, ties(edge, middle));
    }

    private List<TapeSheet.Tie> ties(List<Point> edge, Point middle) {
        List<TapeSheet.Tie> fromSides = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            fromSide(i, edge).ifPresent(fromSides::add);
        }
        List<TapeSheet.Tie> two = two(fromSides, this::direction);
        if (two.size() == 2) {
            return two;
        }
        List<TapeSheet.Tie> fromCorners = new ArrayList<>();
        for (TapeSheet.Corner c : corners) {
            fromCorner(c, edge).ifPresent(fromCorners::add);
        }
        Function<TapeSheet.Tie, Point> way =
                t -> new Point(middle.x() - t.foot().x(), middle.y() - t.foot().y());
        return two.isEmpty() ? two(fromCorners, way) : sideAndCorner(two.get(0), fromCorners, way);
    }

    /** A circle about a corner meets the parallel of a side best where the way to the corner runs along it. */
    private List<TapeSheet.Tie> sideAndCorner(
            TapeSheet.Tie side, List<TapeSheet.Tie> fromCorners, Function<TapeSheet.Tie, Point> way) {
        Point along = direction(side);
        Point normal = new Point(-along.y(), along.x());
        return Stream.concat(
                        Stream.of(side),
                        fromCorners.stream()
                                .filter(t -> sine(way.apply(t), normal) >= LEAST_SINE)
                                .min(NEAREST)
                                .stream())
                .toList();
    }

    /** The nearest tie, and the nearest one that does not run alike. */
    private static List<TapeSheet.Tie> two(List<TapeSheet.Tie> ties, Function<TapeSheet.Tie, Point> direction) {
        List<TapeSheet.Tie> near = ties.stream().sorted(NEAREST).toList();
        for (int j = 1; j < near.size(); j++) {
            for (int i = 0; i < j; i++) {
                if (sine(direction.apply(near.get(i)), direction.apply(near.get(j))) >= LEAST_SINE) {
                    return List.of(near.get(i), near.get(j));
                }
            }
        }
        return near.stream().limit(1).toList();
    }

    private static double sine(Point u, Point v) {
        double product = StrictMath.hypot(u.x(), u.y()) * StrictMath.hypot(v.x(), v.y());
        return product == 0 ? 0 : Math.abs(u.x() * v.y() - u.y() * v.x()) / product;
    }

    private Point direction(TapeSheet.Tie tie) {
        Point a = corner(tie.from());
        Point b = corner(tie.to());
        return new Point(b.x() - a.x(), b.y() - a.y());
    }

    private Point corner(String name) {
        return corners.stream()
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElseThrow()
                .at();
    }

    private Optional<TapeSheet.Tie> fromSide(int i, List<Point> edge) {
        TapeSheet.Side side = sides.get(i);
        Point a = corners.get(i).at();
        Point b = corners.get((i + 1) % corners.size()).at();
        if (side.isCurved() || side.length() < 1) {
            return Optional.empty();
        }
        double ux = (b.x() - a.x()) / side.length();
        double uy = (b.y() - a.y()) / side.length();
        return edge.stream()
                .map(p -> {
                    double along = (p.x() - a.x()) * ux + (p.y() - a.y()) * uy;
                    Point foot = new Point(a.x() + along * ux, a.y() + along * uy);
                    boolean beside = along >= -SLACK && along <= side.length() + SLACK;
                    // The floor lies to the left of the way round.
                    double inwards = (p.y() - a.y()) * ux - (p.x() - a.x()) * uy;
                    return Optional.of(new TapeSheet.Tie(side.from(), side.to(), inwards + 0.0, foot, p))
                            .filter(t -> beside && isMeant(t) && reaches(foot, p));
                })
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(TapeSheet.Tie::distance));
    }

    /** Only what lies off the floor lies outside a side; what lies behind one in another wing does not. */
    private boolean isMeant(TapeSheet.Tie t) {
        return t.distance() >= -TapeSheet.AT_WALL || !inside.covers(FloorShapes.point(t.end()));
    }

    private Optional<TapeSheet.Tie> fromCorner(TapeSheet.Corner corner, List<Point> edge) {
        return edge.stream()
                .filter(p -> reaches(corner.at(), p))
                .map(p -> new TapeSheet.Tie(corner.name(), "", corner.at().distance(p), corner.at(), p))
                .min(Comparator.comparingDouble(TapeSheet.Tie::distance));
    }

    private boolean reaches(Point foot, Point end) {
        return foot.distance(end) < SLACK
                || !inside.covers(FloorShapes.point(end))
                || inside.covers(FloorShapes.line(foot, end));
    }
}
