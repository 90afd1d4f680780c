package org.runbend.optimizer.estimate;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * A plain closed loop over a rectangle: up and down in rows, and back along one side. It serves what can be served but a row where both
 * numbers of rows are odd, with a few bends more than the best loop has; nobody need search for it. Sizes in mm.
 */
final class Comb {
    private static final int LEAST_ROWS = 4;

    private final double length;
    private final double width;
    private final double spacing;
    private final double edge;
    private final int along;
    private final int across;
    private final boolean turned;

    /**
     * A loop.
     *
     * @param length of the rectangle, along x
     * @param width of it, along y
     * @param spacing centre to centre of neighbouring runs
     * @param edge centreline to outline, at least
     */
    Comb(double length, double width, double spacing, double edge) {
        this.length = length;
        this.width = width;
        this.spacing = spacing;
        this.edge = edge;
        int columns = places(length);
        int rows = places(width);
        turned = rows % 2 == 1;
        across = turned ? columns - columns % 2 : rows;
        along = turned ? rows : columns;
    }

    private int places(double side) {
        return (int) Math.floor((side - 2 * edge) / spacing + 1e-9) + 1;
    }

    /** How many places it serves. */
    int places() {
        return along * across;
    }

    /** Whether the rectangle is wide enough for it. */
    boolean hasRoom() {
        return across >= LEAST_ROWS && along >= LEAST_ROWS;
    }

    /** Its corners from the flow hole to the return hole. */
    List<Point> corners() {
        List<Point> corners = new ArrayList<>();
        int start = across / 2 - 1;
        corners.add(at(0, start));
        corners.add(at(0, 0));
        for (int row = 0; row < across; row++) {
            boolean there = row % 2 == 0;
            int near = row == 0 || row == across - 1 ? 0 : 1;
            corners.add(there ? at(row == 0 ? along - 1 : near, row) : at(along - 1, row));
            if (row > 0) {
                corners.add(there ? at(along - 1, row) : at(near, row));
            }
        }
        corners.add(at(0, start + 1));
        return corners;
    }

    /** Where flow and return come up: at the wall between both ends. */
    Point port() {
        Point from = at(0, across / 2 - 1);
        Point to = at(0, across / 2);
        return turned ? new Point((from.x() + to.x()) / 2, 0) : new Point(0, (from.y() + to.y()) / 2);
    }

    private Point at(int place, int row) {
        double x = first(length, turned ? across : along) + (turned ? row : place) * spacing;
        double y = first(width, turned ? along : across) + (turned ? place : row) * spacing;
        return new Point(x, y);
    }

    /** Places lie in the middle of a side. */
    private double first(double side, int places) {
        return (side - (places - 1) * spacing) / 2;
    }
}
