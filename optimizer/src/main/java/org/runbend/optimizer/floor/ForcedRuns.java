package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.runbend.optimizer.breakdown.Keyhole;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * Lines that the loop must run along, forced by what the lattice offers: the nodes on such a line keep no link but those
 * of the line and must be passed. The first and the last node lie far enough beyond the line's ends that a bend there
 * leaves the whole line straight; they are free to go on or to turn.
 */
final class ForcedRuns {
    /** A line that is this far from a row of nodes lies on it, mm; chosen, not measured. */
    private static final double SAME = 0.5;

    private final double spacing;
    private final double radius;
    private final List<Line> lines = new ArrayList<>();
    private final List<KeptChain> kept = new ArrayList<>();
    private final Set<Long> links = new HashSet<>();

    /**
     * A line in the lattice's axes.
     *
     * @param flat whether it runs along x
     * @param level the coordinate that its points share
     * @param low where it begins along the other axis
     * @param high where it ends there
     */
    private record Line(boolean flat, double level, double low, double high) {
        /** Whether a leg with the axes' direction lies on the line with more than its end. */
        boolean overlaps(Point from, Point to) {
            double off = flat ? from.y() - level : from.x() - level;
            double start = flat ? Math.min(from.x(), to.x()) : Math.min(from.y(), to.y());
            double end = flat ? Math.max(from.x(), to.x()) : Math.max(from.y(), to.y());
            boolean along = flat == (Math.abs(to.x() - from.x()) > Math.abs(to.y() - from.y()));
            return along && Math.abs(off) <= SAME && Math.min(end, high) - Math.max(start, low) > SAME;
        }
    }

    ForcedRuns(FloorProblem problem, LatticeAxes frame) {
        this.spacing = problem.spacing();
        this.radius = problem.radius();
        for (PipeRule veto : problem.pipeRules()) {
            if (veto instanceof PipeRule.MustRun run) {
                lines.add(line(frame.in(run.from()), frame.in(run.to())));
            } else if (veto instanceof PipeRule.Kept part) {
                kept.add(new KeptChain(frame.in(part.points()), spacing, radius));
            }
        }
    }

    private static Line line(Point a, Point b) {
        boolean flat = Math.abs(b.x() - a.x()) >= Math.abs(b.y() - a.y());
        return flat
                ? new Line(true, (a.y() + b.y()) / 2, Math.min(a.x(), b.x()), Math.max(a.x(), b.x()))
                : new Line(false, (a.x() + b.x()) / 2, Math.min(a.y(), b.y()), Math.max(a.y(), b.y()));
    }

    /**
     * Offsets worth trying along an axis.
     *
     * @param x whether along x
     * @param usual what would be tried without lines
     * @return those that put nodes on all lines, or the usual ones and exact fits to the lines' ends; empty if no offset
     *     serves all lines
     */
    List<Double> offsets(boolean x, List<Double> usual) {
        List<Double> fixed = Stream.concat(
                        kept.stream().flatMap(k -> k.levels(x).stream()),
                        lines.stream().filter(l -> l.flat != x).map(Line::level))
                .map(this::folded)
                .toList();
        if (!fixed.isEmpty()) {
            // a part read off the floor may lie a few tenths off the exact fit to the outline that it was laid by
            return Stream.concat(Stream.of(fixed.get(0)), usual.stream())
                    .filter(o -> fixed.stream().allMatch(f -> apart(f, o) <= SAME))
                    .distinct()
                    .toList();
        }
        List<Double> all = new ArrayList<>();
        kept.stream().flatMap(k -> k.ends(x).stream()).map(this::folded).forEach(all::add);
        for (Line l : lines) {
            all.add(folded(l.low - radius));
            all.add(folded(l.high + radius));
        }
        all.addAll(usual);
        return all;
    }

    private double folded(double value) {
        double offset = Math.round((value - spacing * Math.floor(value / spacing)) * 1e6) / 1e6;
        return offset >= spacing ? 0 : offset;
    }

    private double apart(double a, double b) {
        double off = Math.abs(a - b);
        return Math.min(off, spacing - off);
    }

    /**
     * Whether a return bend leaves all lines straight. It takes more of its legs than a corner does, for which
     * {@link #force} makes room.
     */
    boolean spares(Keyhole bend) {
        double depth = bend.depth();
        return Stream.of(bend.first(), bend.second()).allMatch(corner -> {
            Point end = new Point(
                    corner.x() + depth * bend.inward().x(),
                    corner.y() + depth * bend.inward().y());
            return lines.stream().noneMatch(l -> l.overlaps(corner, end))
                    && kept.stream().allMatch(k -> k.spares(corner, end));
        });
    }

    /** Forces every line; false if a node or a link that one needs is missing. */
    boolean force(LatticeGraph.Builder graph, Point base) {
        return kept.stream().allMatch(k -> k.force(graph, base, (a, b) -> links.add(key(a, b))))
                && lines.stream().allMatch(l -> force(graph, l, base));
    }

    private boolean force(LatticeGraph.Builder graph, Line line, Point base) {
        double start = line.flat ? base.x() : base.y();
        int row = (int) Math.rint((line.level - (line.flat ? base.y() : base.x())) / spacing);
        int first = (int) Math.floor((line.low - radius - start) / spacing + 1e-6);
        int last = (int) Math.ceil((line.high + radius - start) / spacing - 1e-6);
        List<Integer> chain = new ArrayList<>();
        for (int i = first; i <= last; i++) {
            int node = line.flat ? graph.nodeAt(i, row) : graph.nodeAt(row, i);
            if (node < 0 || (i > first && !graph.linked(chain.get(i - first - 1), node))) {
                return false;
            }
            chain.add(node);
        }
        Heading aside = line.flat ? Heading.NORTH : Heading.EAST;
        for (int i = 1; i < chain.size(); i++) {
            links.add(key(chain.get(i - 1), chain.get(i)));
            if (i + 1 < chain.size()) {
                keepOnly(graph, line.flat, row, first + i, aside);
                graph.want(chain.get(i));
            }
        }
        return true;
    }

    private static void keepOnly(LatticeGraph.Builder graph, boolean flat, int row, int i, Heading aside) {
        int column = flat ? i : row;
        int level = flat ? row : i;
        int node = graph.nodeAt(column, level);
        for (Heading h : List.of(aside, aside.opposite())) {
            int next = graph.nodeAt(column + h.dx(), level + h.dy());
            if (next >= 0) {
                graph.unlink(node, next);
            }
        }
    }

    /** Whether the link lies on a line, so that no port may take its place. */
    boolean holds(int a, int b) {
        return links.contains(key(a, b));
    }

    private static long key(int a, int b) {
        return ((long) Math.min(a, b) << 32) | Math.max(a, b);
    }
}
