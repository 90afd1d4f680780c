package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;

/**
 * The lines at which joints are tried: a whole stock board from either wall, corners and openings of the floor, supports,
 * half way between runs, and between them in even steps.
 */
final class JointPlaces {
    private static final double STEP = 20;

    /** Where a wall turns by more than this there is a corner, radians: own choice, over the chords of round walls. */
    private static final double CORNER = Math.toRadians(10);

    private final BoardsProblem problem;
    private final Layer layer;
    private final List<Joint> below;
    private final HeldJoints held;
    private final Geometry region;
    private final Geometry grooves;

    /** For a layer; where joints are held, there are no places but theirs. */
    JointPlaces(
            BoardsProblem problem, Layer layer, List<Joint> below, HeldJoints held, Geometry region, Geometry grooves) {
        this.problem = problem;
        this.layer = layer;
        this.below = below;
        this.held = held;
        this.region = region;
        this.grooves = grooves;
    }

    /**
     * Lines in order; walls are not among them. With more than the usual number, all the usual ones are among them.
     *
     * @param upright whether they are upright
     * @param usual how many at most of those that most floors need
     * @param more how many at most beside, by openings and corners of the floor first
     * @param throughout whether a joint must be possible from wall to wall
     */
    List<JointLine> lines(boolean upright, Sheet sheet, int usual, int more, boolean throughout) {
        Envelope box = region.getEnvelopeInternal();
        List<Double> places = places(
                upright, sheet, upright ? box.getMinX() : box.getMinY(), upright ? box.getMaxX() : box.getMaxY());
        List<JointLine> chosen = new ArrayList<>();
        choose(chosen, places, usual, upright, throughout);
        if (more > 0) {
            List<Double> seen = new ArrayList<>();
            openings(seen, upright);
            seen.addAll(betweenCorners(upright, sheet));
            choose(chosen, seen, usual + more, upright, throughout);
            choose(chosen, places, usual + more, upright, throughout);
        }
        chosen.sort(Comparator.comparingDouble(JointLine::at));
        return chosen;
    }

    private void choose(List<JointLine> chosen, List<Double> places, int most, boolean upright, boolean throughout) {
        Envelope box = region.getEnvelopeInternal();
        double least = problem.making().leastPart();
        double low = (upright ? box.getMinX() : box.getMinY()) + least;
        double high = (upright ? box.getMaxX() : box.getMaxY()) - least;
        for (double at : places) {
            boolean apart = chosen.stream().allMatch(l -> Math.abs(l.at() - at) >= STEP / 2);
            if (chosen.size() < most && at > low && at < high && apart) {
                JointLine line = new JointLine(problem, layer, below, held, upright, at, grooves);
                if (serves(line, upright, box, throughout)) {
                    chosen.add(line);
                }
            }
        }
    }

    /** Whether the whole line, or else some stretch of a part's least size, could be a joint. */
    private boolean serves(JointLine line, boolean upright, Envelope box, boolean throughout) {
        double from = upright ? box.getMinY() : box.getMinX();
        double to = upright ? box.getMaxY() : box.getMaxX();
        double step = throughout ? to - from : problem.making().leastPart();
        for (double a = from; a + step <= to + 1e-9; a += step) {
            if (line.isAllowed(a, a + step)) {
                return true;
            }
        }
        return false;
    }

    /** Places in the order of how likely they serve. */
    private List<Double> places(boolean upright, Sheet sheet, double low, double high) {
        if (held.any()) {
            return held.lines(upright);
        }
        List<Double> all = new ArrayList<>();
        double gap = problem.making().jointGap();
        List<Double> sides = List.of(
                sheet.width() - 2 * problem.making().trim() + gap,
                sheet.length() - 2 * problem.making().trim() + gap);
        for (double side : sides) {
            whole(all, side, gap, low, high, 0);
        }
        openings(all, upright);
        for (double side : sides) {
            int parts = (int) Math.ceil((high - low) / side - 1e-9);
            for (int i = 1; i < parts; i++) {
                all.add(low + (high - low) * i / parts);
            }
        }
        TreeSet<Double> corners = new TreeSet<>();
        for (Coordinate c : region.getBoundary().getCoordinates()) {
            corners.add(Math.rint((upright ? c.x : c.y) * 10) / 10);
        }
        if (corners.size() <= 24) {
            corners.forEach(c -> {
                all.add(c + gap / 2);
                all.add(c - gap / 2);
            });
        }
        problem.supports()
                .forEach(s -> all.add(upright ? s.from().x() : s.from().y()));
        all.addAll(betweenRuns(upright));
        for (int step = 1; step < 6; step++) {
            for (double side : sides) {
                whole(all, side, gap, low, high, step * STEP);
            }
        }
        for (int parts = 2; parts <= 12; parts++) {
            for (int i = 1; i < parts; i++) {
                all.add(low + (high - low) * i / parts);
            }
        }
        return all;
    }

    /**
     * At the corners of the floor that one sees, and in even steps of at most a board between them. Chords of round walls and
     * things make no corner.
     */
    private List<Double> betweenCorners(boolean upright, Sheet sheet) {
        TreeSet<Double> corners = new TreeSet<>();
        for (Polygon part : Region.polygons(region)) {
            Coordinate[] ring = part.getExteriorRing().getCoordinates();
            for (int i = 0; i < ring.length - 1; i++) {
                Coordinate before = ring[i == 0 ? ring.length - 2 : i - 1];
                if (Angle.diff(Angle.angle(before, ring[i]), Angle.angle(ring[i], ring[i + 1])) > CORNER) {
                    corners.add(upright ? ring[i].x : ring[i].y);
                }
            }
        }
        List<Double> all = new ArrayList<>();
        List<Double> steps = new ArrayList<>();
        double half = problem.making().jointGap() / 2;
        double side =
                Math.max(sheet.length(), sheet.width()) - 2 * problem.making().trim();
        Double last = null;
        for (double c : corners) {
            if (last != null && c - last < STEP) {
                continue;
            }
            all.add(c + half);
            int parts = last == null ? 1 : (int) Math.ceil((c - last) / side - 1e-9);
            for (int i = 1; i < parts; i++) {
                steps.add(last + (c - last) * i / parts);
            }
            last = c;
        }
        all.addAll(steps);
        return all;
    }

    /** Through the middle of what has no board all round it, and beside large openings. */
    private void openings(List<Double> all, boolean upright) {
        for (Cutout c : problem.cutouts()) {
            Envelope e = Region.open(c).getEnvelopeInternal();
            double low = upright ? e.getMinX() : e.getMinY();
            double high = upright ? e.getMaxX() : e.getMaxY();
            boolean here = c.through().contains(layer.role());
            if (here && c.filling() != BoardsProblem.Filling.OPEN) {
                all.add((low + high) / 2);
            }
            if (here && high - low > problem.making().leastPart()) {
                all.add(low - JointLine.FROM_OPENING - 1);
                all.add(high + JointLine.FROM_OPENING + 1);
            }
        }
    }

    /** Whole boards from either wall, each so much shorter. */
    private static void whole(List<Double> all, double side, double gap, double low, double high, double less) {
        for (int n = 1; low + n * side < high; n++) {
            all.add(low + n * side - gap / 2 - less);
            all.add(high - n * side + gap / 2 + less);
        }
    }

    private List<Double> betweenRuns(boolean upright) {
        TreeSet<Double> runs = new TreeSet<>();
        if (layer.role() == Role.ROUTED) {
            for (Breakdown loop : problem.loops()) {
                for (Element e : loop.pipe()) {
                    boolean parallel = e instanceof Element.Run
                            && Math.abs(
                                            upright
                                                    ? e.from().x() - e.to().x()
                                                    : e.from().y() - e.to().y())
                                    < 1;
                    if (parallel) {
                        runs.add(upright ? e.from().x() : e.from().y());
                    }
                }
            }
        }
        List<Double> between = new ArrayList<>();
        Double last = null;
        for (double r : runs) {
            if (last != null && r - last > 30) {
                between.add((last + r) / 2);
            }
            last = r;
        }
        return between;
    }
}
