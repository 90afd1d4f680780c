package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.runbend.optimizer.job.Point;

/**
 * Offsets worth trying along one axis: those that put a row of nodes exactly {@code edge} off a corner of the outline,
 * and steps of a tenth of the spacing.
 */
final class Offsets {
    /** Corners that lattices are fitted to: chosen, not measured. */
    private static final int MOST_CORNERS = 24;

    /** Offsets this near are one, mm: chosen, not measured. */
    private static final double SAME = 0.01;

    private Offsets() {}

    /**
     * Offsets in [0, spacing), exact fits first.
     *
     * @param outline corners in the lattice's axes
     * @param coordinate x or y
     */
    static List<Double> along(List<Point> outline, ToDoubleFunction<Point> coordinate, double spacing, double edge) {
        List<Double> found = fits(outline, coordinate, spacing, edge, MOST_CORNERS);
        for (int tenth = 0; tenth < 10; tenth++) {
            add(found, tenth * spacing / 10, spacing);
        }
        return found;
    }

    /** The offsets at which a row passes through the coordinates given, those that are new, before all others. */
    static List<Double> through(List<Double> coordinates, double spacing, List<Double> others) {
        List<Double> found = new ArrayList<>();
        coordinates.forEach(c -> add(found, c, spacing));
        others.forEach(o -> add(found, o, spacing));
        return found;
    }

    /** The exact fits alone, of at most so many corners. */
    static List<Double> fits(
            List<Point> outline, ToDoubleFunction<Point> coordinate, double spacing, double edge, int corners) {
        List<Double> found = new ArrayList<>();
        int stride = (outline.size() + corners - 1) / corners;
        for (int i = 0; i < outline.size(); i += stride) {
            double at = coordinate.applyAsDouble(outline.get(i));
            add(found, at + edge, spacing);
            add(found, at - edge, spacing);
        }
        return found;
    }

    private static void add(List<Double> found, double value, double spacing) {
        double offset = value - spacing * Math.floor(value / spacing);
        if (offset > spacing - SAME) {
            offset = 0;
        }
        double rounded = Math.round(offset * 1e6) / 1e6;
        if (found.stream().noneMatch(f -> Math.abs(f - rounded) < SAME)) {
            found.add(rounded);
        }
    }
}
