package org.runbend.optimizer.floor;

import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.job.Point;

/**
 * Finds the way from a hole to a node: straight into the first run, round one corner, or round two. It begins with a straight
 * over the whole slot, bends at the least radius as fitted, and comes into the node in the direction in which the loop leaves
 * it. Works in the lattice's axes, mm.
 */
final class LeadFinder {
    /** Grids of corners, mm: finer ones find hardly more; the command was not written down, so it counts as chosen. */
    private static final double STEP = 15;

    /** The same for the first look: chosen, not measured. */
    private static final double COARSE = 30;

    /** Longest straight of a lead-in, in spacings: chosen, not measured. */
    private static final double MOST_SPACINGS = 2.5;
    /** Directions of the first of two straights; chosen, not measured. */
    private static final int DIRECTIONS = 8;
    /** Sharper turns than this are return bends and lead nowhere near, radians; chosen, not measured. */
    private static final double SHARPEST = Math.toRadians(140);

    /** Lengths this near are one, mm: chosen, not measured. */
    private static final double SAME = 0.01;

    private final Entry entry;
    private final double spacing;
    private final double straightBehindNode;
    private final EntryRoom room;

    LeadFinder(FloorProblem problem, EntryRoom room) {
        this.entry = problem.entry();
        this.spacing = problem.spacing();
        this.straightBehindNode = problem.spacing() - problem.radius();
        this.room = room;
    }

    /** A way and its pieces. */
    record Way(Lead lead, List<Element> elements) {
        double length() {
            return elements.stream().mapToDouble(Element::length).sum();
        }
    }

    /**
     * The shortest way that was met, if any was.
     *
     * @param hole where it begins
     * @param node where it ends
     * @param dx direction in which the loop leaves the node
     * @param dy likewise
     */
    Optional<Way> find(Point hole, Point node, int dx, int dy) {
        double along = (node.x() - hole.x()) * dx + (node.y() - hole.y()) * dy;
        double aside = Math.abs((node.x() - hole.x()) * dy - (node.y() - hole.y()) * dx);
        if (aside < SAME && along > SAME && along + straightBehindNode >= entry.slot()) {
            Optional<Way> straight = way(List.of(hole, node), dx, dy);
            if (straight.isPresent()) {
                return straight;
            }
        }
        return oneCorner(hole, node, dx, dy).or(() -> twoCorners(hole, node, dx, dy));
    }

    private Optional<Way> oneCorner(Point hole, Point node, int dx, int dy) {
        for (double t = 0; t <= MOST_SPACINGS * spacing; t += STEP) {
            Point corner = new Point(node.x() - t * dx, node.y() - t * dy);
            double reach = hole.distance(corner);
            if (reach < entry.slot()) {
                continue;
            }
            double turn = turn(hole, corner, dx, dy);
            double take = entry.radius() * Math.tan(turn / 2);
            if (turn > SHARPEST || turn < 1e-6 || take > t + 1e-9 || reach - take < entry.slot()) {
                continue;
            }
            Optional<Way> way = way(List.of(hole, corner, node), dx, dy);
            if (way.isPresent()) {
                return way;
            }
        }
        return Optional.empty();
    }

    private Optional<Way> twoCorners(Point hole, Point node, int dx, int dy) {
        Way best = null;
        for (int d = 0; d < DIRECTIONS; d++) {
            double ux = Math.cos(2 * Math.PI * d / DIRECTIONS);
            double uy = Math.sin(2 * Math.PI * d / DIRECTIONS);
            for (double s = entry.slot(); s <= MOST_SPACINGS * spacing; s += COARSE) {
                Point first = new Point(hole.x() + s * ux, hole.y() + s * uy);
                for (double t = 0; t <= MOST_SPACINGS * spacing; t += COARSE) {
                    Point second = new Point(node.x() - t * dx, node.y() - t * dy);
                    double between = first.distance(second);
                    if (between < SAME || (best != null && s + between + t >= best.length() + COARSE)) {
                        continue;
                    }
                    double length = length(s, hole, first, second, between, t, dx, dy);
                    if (best == null ? length < Double.POSITIVE_INFINITY : length < best.length() - SAME) {
                        Optional<Way> way = way(List.of(hole, first, second, node), dx, dy);
                        best = way.isPresent() && shorter(way.get(), best) ? way.get() : best;
                    }
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static boolean shorter(Way a, Way b) {
        return b == null || a.length() < b.length() - SAME;
    }

    /** Of a way round two corners, mm; infinite where its bends or the straight of the slot have no room. */
    private double length(double s, Point hole, Point first, Point second, double between, double t, int dx, int dy) {
        double turnA = turn(hole, first, (second.x() - first.x()) / between, (second.y() - first.y()) / between);
        double turnB = turn(first, second, dx, dy);
        if (turnA > SHARPEST || turnB > SHARPEST || turnA < 1e-6 || turnB < 1e-6) {
            return Double.POSITIVE_INFINITY;
        }
        double takeA = entry.radius() * Math.tan(turnA / 2);
        double takeB = entry.radius() * Math.tan(turnB / 2);
        boolean hasRoom = s - takeA >= entry.slot() && takeA + takeB <= between && takeB <= t;
        return hasRoom
                ? s + between + t - 2 * (takeA + takeB) + entry.radius() * (turnA + turnB)
                : Double.POSITIVE_INFINITY;
    }

    /** Angle between the way from a to b and a direction, radians. */
    private static double turn(Point a, Point b, double dx, double dy) {
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        return Math.abs(Math.atan2(ux * dy - uy * dx, ux * dx + uy * dy));
    }

    /** Whether the way meets neither itself nor the first run of the loop further on. */
    private boolean isClearOfItself(List<Element> way, int dx, int dy) {
        Point node = way.get(way.size() - 1).to();
        Point next = new Point(node.x() + spacing * dx, node.y() + spacing * dy);
        for (int i = 0; i < way.size(); i++) {
            Strand strand = new Strand(way.subList(i, i + 1));
            double between = 0;
            for (int j = i + 1; j < way.size(); j++) {
                if (between >= spacing && strand.isNear(new Strand(way.subList(j, j + 1)), entry.apart())) {
                    return false;
                }
                between += way.get(j).length();
            }
            if (between >= spacing && strand.isNear(node.x(), node.y(), next.x(), next.y(), entry.apart())) {
                return false;
            }
        }
        return true;
    }

    private Optional<Way> way(List<Point> corners, int dx, int dy) {
        List<Element> elements =
                new Filleting().breakDown(corners, entry.radius()).elements();
        return room.allows(elements) && isClearOfItself(elements, dx, dy)
                ? Optional.of(new Way(new Lead(corners), elements))
                : Optional.empty();
    }
}
