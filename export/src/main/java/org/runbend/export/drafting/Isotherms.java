package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.heat.field.RasterFrame;

/**
 * Lines of equal temperature between the centres of cells: marching squares, each square as two triangles, chained to long lines.
 * What runs round less than a hand is left out: it says nothing and looks like dirt.
 */
final class Isotherms {
    private static final double SAME = 1e-4;
    /** Shortest line that is drawn, mm. */
    private static final double SHORTEST = 150;
    /** Shortest line that bears its number, mm. */
    private static final double LABELLED = 300;
    /** Numbers stand this far from each other, as a share of the floor's diagonal. */
    private static final double APART = 0.09;

    private static final int MOST_LABELS = 4;
    /** Of a place too near to an edge for a number. */
    private static final double NO_ROOM = 1e3;

    private final FieldSolution field;

    Isotherms(FieldSolution field) {
        this.field = field;
    }

    /** One for each level between two steps that passes the floor. */
    List<ShadedFloor.LevelLine> lines(double lowest, double step, int count) {
        RasterFrame f = field.frame();
        double apart = APART * Math.hypot(f.columns(), f.rows()) * f.cell();
        List<ShadedFloor.LevelLine> lines = new ArrayList<>();
        List<Point> placed = new ArrayList<>();
        for (int i = 1; i < count; i++) {
            double level = lowest + i * step;
            List<Path> chains = new Chains(segments(level))
                    .paths().stream().filter(p -> length(p) >= SHORTEST).toList();
            if (!chains.isEmpty()) {
                List<Point> labels = labels(chains, placed, apart);
                placed.addAll(labels);
                lines.add(new ShadedFloor.LevelLine(Decimals.of(level, 1), chains, labels));
            }
        }
        return lines;
    }

    private static double length(Path path) {
        double sum = 0;
        for (int i = 0; i < path.partCount(); i++) {
            sum += path.vertices().get(i).point().distance(path.end(i));
        }
        return sum;
    }

    /** Where lines lie widest apart and no other number is near; at least one where a line is long enough. */
    private List<Point> labels(List<Path> chains, List<Point> placed, double apart) {
        List<Point> candidates = chains.stream()
                .filter(p -> length(p) >= LABELLED)
                .flatMap(p -> p.vertices().stream())
                .map(v -> v.point())
                .toList();
        List<Point> labels = new ArrayList<>();
        while (labels.size() < MOST_LABELS) {
            Point best = null;
            double flattest = NO_ROOM;
            for (Point p : candidates) {
                boolean free = placed.stream().allMatch(o -> o.distance(p) >= apart)
                        && labels.stream().allMatch(o -> o.distance(p) >= 3 * apart);
                double steep = free ? steepness(p) : Double.POSITIVE_INFINITY;
                if (steep < flattest - SAME) {
                    flattest = steep;
                    best = p;
                }
            }
            if (best == null) {
                return labels;
            }
            labels.add(best);
        }
        return labels;
    }

    /** How much the temperature differs around a place, K. */
    private double steepness(Point at) {
        RasterFrame f = field.frame();
        int column = (int) Math.floor((at.x() - f.x()) / f.cell());
        int row = (int) Math.floor((at.y() - f.y()) / f.cell());
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int r = row - 3; r <= row + 3; r++) {
            for (int c = column - 3; c <= column + 3; c++) {
                if (r < 0 || c < 0 || r >= f.rows() || c >= f.columns() || !field.isFloor(c, r)) {
                    return NO_ROOM;
                }
                least = Math.min(least, field.surface(c, r));
                most = Math.max(most, field.surface(c, r));
            }
        }
        return most - least;
    }

    private List<Segment> segments(double level) {
        List<Segment> segments = new ArrayList<>();
        RasterFrame f = field.frame();
        for (int row = 0; row + 1 < f.rows(); row++) {
            for (int column = 0; column + 1 < f.columns(); column++) {
                int[][] square = {{column, row}, {column + 1, row}, {column + 1, row + 1}, {column, row + 1}};
                triangle(level, square[0], square[1], square[2], segments);
                triangle(level, square[0], square[2], square[3], segments);
            }
        }
        return segments;
    }

    private void triangle(double level, int[] a, int[] b, int[] c, List<Segment> segments) {
        if (!floor(a) || !floor(b) || !floor(c)) {
            return;
        }
        List<Point> crossings = new ArrayList<>();
        cross(level, a, b, crossings);
        cross(level, b, c, crossings);
        cross(level, c, a, crossings);
        if (crossings.size() == 2) {
            segments.add(new Segment(crossings.get(0), crossings.get(1)));
        }
    }

    private boolean floor(int[] cell) {
        return field.isFloor(cell[0], cell[1]);
    }

    /** The same point to the last digit from both triangles at an edge: it is reckoned from the same end. */
    private void cross(double level, int[] a, int[] b, List<Point> crossings) {
        if (a[1] > b[1] || (a[1] == b[1] && a[0] > b[0])) {
            cross(level, b, a, crossings);
            return;
        }
        double ta = field.surface(a[0], a[1]);
        double tb = field.surface(b[0], b[1]);
        if (ta < level != tb < level) {
            double share = (level - ta) / (tb - ta);
            crossings.add(new Point(x(a) + share * (x(b) - x(a)), y(a) + share * (y(b) - y(a))));
        }
    }

    private double x(int[] cell) {
        return field.frame().x() + (cell[0] + 0.5) * field.frame().cell();
    }

    private double y(int[] cell) {
        return field.frame().y() + (cell[1] + 0.5) * field.frame().cell();
    }
}
