package org.runbend.optimizer.tape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Chooses what to measure on a floor: its corners, sides and diagonals, and two distances for each thing on it.
 *
 * <p>A polygon of n corners is fixed by its sides and n - 3 diagonals; one more checks the others, and each corner that
 * can be has a diagonal. Long ones go first: the same slip of a tape turns a long line less.
 */
public final class TapeMeasuring {
    /** A tape along a wall may cut a corner by this much, mm. */
    private static final double SLACK = 1;

    private static final int MOST_DIAGONALS = 10;
    /** Floors with more corners than this are curves written as points; only some of their corners get diagonals. */
    private static final int MOST_CORNERS = 60;

    /** The measures of a job's floor, with the holes that it gives. */
    public TapeSheet measure(Job job) {
        List<Hole> holes = new ArrayList<>();
        List<Job.HolePair> pairs = job.floor().port().holes();
        for (int i = 0; i < pairs.size(); i++) {
            String loop = String.valueOf((char) ('A' + i));
            holes.add(new Hole(loop + " flow", pairs.get(i).flow()));
            holes.add(new Hole(loop + " return", pairs.get(i).back()));
        }
        return measure(job, holes);
    }

    /**
     * A hole.
     *
     * @param name what a person calls it
     * @param at its middle
     */
    public record Hole(String name, Point at) {}

    /** The measures of a job's floor and of holes in it. */
    public TapeSheet measure(Job job, List<Hole> holes) {
        Job.FloorPlan floor = job.floor();
        List<Point> outline = floor.outline();
        List<String> names = job.written().corners();
        boolean named = names.size() == outline.size();
        CornerPicking picking = new CornerPicking(outline);
        List<TapeSheet.Corner> corners = named ? picking.named(names) : picking.lettered();
        PreparedGeometry inside =
                PreparedGeometryFactory.prepare(FloorShapes.polygon(outline).buffer(SLACK));
        List<TapeSheet.Side> sides = new SideMeasuring(outline, corners).sides();
        Tying tying = new Tying(corners, sides, inside);
        Envelope box = FloorShapes.polygon(outline).getEnvelopeInternal();
        return new TapeSheet(
                corners,
                named,
                sides,
                diagonals(corners, inside),
                box.getWidth(),
                box.getHeight(),
                floor.keepOuts().stream().map(k -> keepOut(tying, k)).toList(),
                floor.unheated().stream()
                        .map(u -> tying.region(u.name(), u.region().corners()))
                        .toList(),
                floor.below().stream()
                        .map(b -> tying.region(b.name(), b.region().corners()))
                        .toList(),
                floor.supports().stream()
                        .map(s -> tying.region(s.name(), s.region().corners()))
                        .toList(),
                floor.marks().stream().map(m -> tying.point(m.text(), m.at())).toList(),
                tying.point("port", floor.port().at()),
                holes.stream().map(h -> tying.point(h.name(), h.at())).toList());
    }

    private static TapeSheet.Thing keepOut(Tying tying, KeepOut k) {
        if (k.bare() instanceof Shape.Polygon p) {
            return tying.region(k.name(), p.corners());
        }
        return tying.point(k.name(), k.bare() instanceof Shape.Circle c ? c.centre() : ((Shape.Spot) k.bare()).at());
    }

    private static List<TapeSheet.Diagonal> diagonals(List<TapeSheet.Corner> corners, PreparedGeometry inside) {
        List<int[]> pairs = pairs(corners, inside);
        int wanted = Math.min(MOST_DIAGONALS, Math.max(0, corners.size() - 3) + 1);
        TreeSet<Integer> reached = new TreeSet<>();
        List<int[]> chosen = new ArrayList<>();
        for (int[] pair : pairs) {
            if (chosen.size() < wanted && (!reached.contains(pair[0]) || !reached.contains(pair[1]))) {
                reached.add(pair[0]);
                reached.add(pair[1]);
                chosen.add(pair);
            }
        }
        pairs.stream()
                .filter(p -> !chosen.contains(p))
                .limit(wanted - chosen.size())
                .forEach(chosen::add);
        return chosen.stream()
                .map(p -> new TapeSheet.Diagonal(
                        corners.get(p[0]).name(), corners.get(p[1]).name(), length(corners, p)))
                .sorted(Comparator.comparingDouble(d -> -Math.rint(d.length())))
                .toList();
    }

    /** Pairs of corners that are no neighbours and see each other, longest first; in the order of corners where equal. */
    private static List<int[]> pairs(List<TapeSheet.Corner> corners, PreparedGeometry inside) {
        int n = Math.min(MOST_CORNERS, corners.size());
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = i + 2; j < n; j++) {
                boolean neighbours = i == 0 && j == corners.size() - 1;
                if (!neighbours
                        && inside.covers(FloorShapes.line(
                                corners.get(i).at(), corners.get(j).at()))) {
                    pairs.add(new int[] {i, j});
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(p -> -Math.rint(length(corners, p))));
        return pairs;
    }

    private static double length(List<TapeSheet.Corner> corners, int[] pair) {
        return corners.get(pair[0]).at().distance(corners.get(pair[1]).at());
    }
}
