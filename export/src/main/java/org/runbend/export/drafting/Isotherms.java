package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.heat.field.RasterFrame;

/** Lines of equal temperature between the centres of cells: marching squares, each square as two triangles. */
final class Isotherms {
    private static final double SAME = 1e-4;
    private static final int TRIED = 400;

    private final FieldSolution field;

    Isotherms(FieldSolution field) {
        this.field = field;
    }

    /** One line for each level between two steps that passes the floor. */
    List<ShadedFloor.LevelLine> lines(double lowest, double step, int count) {
        List<ShadedFloor.LevelLine> lines = new ArrayList<>();
        for (int i = 1; i < count; i++) {
            double level = lowest + i * step;
            List<Segment> segments = segments(level);
            if (!segments.isEmpty()) {
                Point label = farFrom(lines, segments);
                lines.add(new ShadedFloor.LevelLine(Decimals.of(level, 1), segments, label));
            }
        }
        return lines;
    }

    /** A place on the line as far from other labels as can be. */
    private static Point farFrom(List<ShadedFloor.LevelLine> placed, List<Segment> segments) {
        Point best = segments.get(segments.size() / 2).a();
        double farthest = -1;
        int stride = Math.max(1, segments.size() / TRIED);
        for (int i = 0; i < segments.size() && !placed.isEmpty(); i += stride) {
            Point at = segments.get(i).a();
            double near = placed.stream()
                    .mapToDouble(l -> l.label().distance(at))
                    .min()
                    .orElseThrow();
            if (near > farthest) {
                farthest = near;
                best = at;
            }
        }
        return best;
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
        if (crossings.size() == 2 && crossings.get(0).distance(crossings.get(1)) > SAME) {
            segments.add(new Segment(crossings.get(0), crossings.get(1)));
        }
    }

    private boolean floor(int[] cell) {
        return field.isFloor(cell[0], cell[1]);
    }

    private void cross(double level, int[] a, int[] b, List<Point> crossings) {
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
