package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.optimizer.boards.BoardsPlan.Part;

/**
 * Where a part has most room for its label, off edges, grooves and openings.
 *
 * @param at the place, on the floor
 * @param radius mm free around it; 0 if there is no room at all
 */
record PartRoom(Point at, double radius) {
    private static final int ROWS = 14;
    private static final int COLUMNS = 3 * ROWS;

    /** The roomiest of some hundred places of a part. */
    static PartRoom of(Part part) {
        List<List<Point>> rings = new ArrayList<>();
        rings.add(Places.all(part.edge()));
        part.openings().forEach(o -> rings.add(Places.all(o)));
        part.pockets().forEach(o -> rings.add(Places.all(o)));
        part.ramps().forEach(o -> rings.add(Places.all(o)));
        Extent box = Extent.around(rings.get(0));
        PartRoom best = new PartRoom(box.centre(), 0);
        for (int i = 1; i < COLUMNS; i++) {
            for (int k = 1; k < ROWS; k++) {
                Point p = new Point(box.minX() + box.width() * i / COLUMNS, box.minY() + box.height() * k / ROWS);
                double room = Places.isInside(p, rings.get(0)) ? room(p, rings, part) : 0;
                if (room > best.radius() + 1e-6) {
                    best = new PartRoom(p, room);
                }
            }
        }
        return best;
    }

    private static double room(Point p, List<List<Point>> rings, Part part) {
        double least = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rings.size(); r++) {
            List<Point> ring = rings.get(r);
            if (r > 0 && Places.isInside(p, ring)) {
                return 0;
            }
            for (int i = 0; i < ring.size(); i++) {
                least = Math.min(least, Places.away(p, ring.get(i), ring.get((i + 1) % ring.size())));
            }
        }
        for (var round : part.rounds()) {
            least = Math.min(least, p.distance(Places.at(round.centre())) - round.radius());
        }
        return least;
    }
}
