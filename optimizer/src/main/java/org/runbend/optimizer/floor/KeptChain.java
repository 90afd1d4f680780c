package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * A routed part of the loop on the lattice, in the lattice's axes: the chain of nodes that it runs through. The inner
 * nodes keep the chain's links alone and must be passed, so each is a straight or a corner of the part. The chain begins
 * and ends at the first node at or beyond the part's ends; where a bend there would eat into the part, its corners with
 * the chain are forbidden, which only a port excuses.
 */
final class KeptChain {
    /** A corner this near to a place lies on it, mm: as in {@link ForcedRuns}, chosen, not measured. */
    private static final double FITS = 0.5;

    private final List<Point> points;
    private final double spacing;
    private final double radius;

    KeptChain(List<Point> points, double spacing, double radius) {
        this.points = List.copyOf(points);
        this.spacing = spacing;
        this.radius = radius;
    }

    /** Coordinates along an axis that rows or columns of nodes must have: those of the legs across it. */
    List<Double> levels(boolean x) {
        List<Double> levels = new ArrayList<>();
        for (int i = 1; i < points.size(); i++) {
            if (heading(i).dx() == 0 == x) {
                Point a = points.get(i - 1);
                Point b = points.get(i);
                levels.add(x ? (a.x() + b.x()) / 2 : (a.y() + b.y()) / 2);
            }
        }
        return levels;
    }

    /** Coordinates along an axis that nodes may well have, so that a bend begins where the part ends. */
    List<Double> ends(boolean x) {
        List<Double> ends = new ArrayList<>();
        for (Point end : List.of(points.get(0), points.get(points.size() - 1))) {
            double at = x ? end.x() : end.y();
            ends.addAll(List.of(at - radius, at + radius, at));
        }
        return ends;
    }

    /** Direction of the leg that ends at point i. */
    private Heading heading(int i) {
        double dx = points.get(i).x() - points.get(i - 1).x();
        double dy = points.get(i).y() - points.get(i - 1).y();
        boolean flat = Math.abs(dx) >= Math.abs(dy);
        return flat ? Heading.ofStep((int) Math.signum(dx), 0) : Heading.ofStep(0, (int) Math.signum(dy));
    }

    /** Whether a bend that takes a leg from its corner to {@code to} leaves the part's first and last legs alone. */
    boolean spares(Point corner, Point to) {
        int last = points.size() - 1;
        boolean inner = points.subList(1, last).stream().anyMatch(p -> p.distance(corner) <= FITS);
        return inner
                || (isClear(points.get(0), points.get(1), corner, to)
                        && isClear(points.get(last - 1), points.get(last), corner, to));
    }

    private static boolean isClear(Point a, Point b, Point from, Point to) {
        double length = from.distance(to);
        double ux = (to.x() - from.x()) / length;
        double uy = (to.y() - from.y()) / length;
        double offA = Math.abs((a.y() - from.y()) * ux - (a.x() - from.x()) * uy);
        double offB = Math.abs((b.y() - from.y()) * ux - (b.x() - from.x()) * uy);
        double s = (a.x() - from.x()) * ux + (a.y() - from.y()) * uy;
        double t = (b.x() - from.x()) * ux + (b.y() - from.y()) * uy;
        double common = Math.min(length, Math.max(s, t)) - Math.max(0, Math.min(s, t));
        return offA > FITS || offB > FITS || common <= FITS;
    }

    /** Forces the chain and tells its links; false if a node or a link is missing. */
    boolean force(LatticeGraph.Builder graph, Point base, BiConsumer<Integer, Integer> link) {
        List<Integer> chain = new ArrayList<>();
        int last = points.size() - 1;
        int[] at = outward(points.get(0), heading(1).opposite(), base);
        boolean whole = add(graph, chain, at[0], at[1]);
        for (int i = 1; i <= last && whole; i++) {
            int[] to = i < last ? nearest(points.get(i), base) : outward(points.get(last), heading(last), base);
            whole = walk(graph, chain, at, to, heading(i));
            at = to;
        }
        if (!whole || chain.size() < 2) {
            return false;
        }
        for (int i = 1; i < chain.size(); i++) {
            link.accept(chain.get(i - 1), chain.get(i));
        }
        hold(graph, chain, base);
        return true;
    }

    private boolean walk(LatticeGraph.Builder graph, List<Integer> chain, int[] from, int[] to, Heading heading) {
        int column = from[0];
        int row = from[1];
        int steps = (to[0] - column) * heading.dx() + (to[1] - row) * heading.dy();
        boolean whole = true;
        for (int i = 0; i < steps && whole; i++) {
            column += heading.dx();
            row += heading.dy();
            whole = add(graph, chain, column, row);
        }
        return whole && column == to[0] && row == to[1];
    }

    private static boolean add(LatticeGraph.Builder graph, List<Integer> chain, int column, int row) {
        int node = graph.nodeAt(column, row);
        if (node < 0 || (!chain.isEmpty() && !graph.linked(chain.get(chain.size() - 1), node))) {
            return false;
        }
        return chain.add(node);
    }

    private int[] nearest(Point p, Point base) {
        return new int[] {(int) Math.rint((p.x() - base.x()) / spacing), (int) Math.rint((p.y() - base.y()) / spacing)};
    }

    /** The first node at or beyond an end of the part. */
    private int[] outward(Point end, Heading out, Point base) {
        double x = (end.x() - base.x()) / spacing;
        double y = (end.y() - base.y()) / spacing;
        double forgiven = FITS / spacing;
        return new int[] {
            out.dx() == 0 ? (int) Math.rint(x) : out.dx() * (int) Math.ceil(out.dx() * x - forgiven),
            out.dy() == 0 ? (int) Math.rint(y) : out.dy() * (int) Math.ceil(out.dy() * y - forgiven)
        };
    }

    private void hold(LatticeGraph.Builder graph, List<Integer> chain, Point base) {
        int last = chain.size() - 1;
        for (int i = 1; i < last; i++) {
            keepOnly(graph, chain.get(i), chain.get(i - 1), chain.get(i + 1));
        }
        int end = points.size() - 1;
        holdEnd(graph, chain, 0, heading(1).opposite(), points.get(0), base);
        holdEnd(graph, chain, last, heading(end), points.get(end), base);
        chain.forEach(graph::want);
    }

    /** Takes all links of a node away but those to two others. */
    private static void keepOnly(LatticeGraph.Builder graph, int node, int before, int after) {
        for (int next : graph.neighbours(node)) {
            if (next != before && next != after) {
                graph.unlink(node, next);
            }
        }
    }

    /** Where the part reaches further than a bend at the chain's end would begin, the chain must go on straight. */
    private void holdEnd(LatticeGraph.Builder graph, List<Integer> chain, int i, Heading out, Point end, Point base) {
        int node = chain.get(i);
        int[] at = outward(end, out, base);
        double beyond =
                (base.x() + at[0] * spacing - end.x()) * out.dx() + (base.y() + at[1] * spacing - end.y()) * out.dy();
        if (beyond >= radius - FITS) {
            return;
        }
        if (chain.size() == 2) {
            int on = graph.nodeAt(at[0] + out.dx(), at[1] + out.dy());
            keepOnly(graph, node, chain.get(1 - i), on);
        }
        graph.forbidBend(node, out.opposite(), out.left());
        graph.forbidBend(node, out.opposite(), out.right());
    }
}
