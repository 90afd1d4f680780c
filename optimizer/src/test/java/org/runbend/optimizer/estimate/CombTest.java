package org.runbend.optimizer.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Point;

/** The plain loop, walked step by step on 400 seeded rectangles. */
class CombTest {
    private static final double EDGE = 75;

    @Test
    void passesEachPlaceOnce() {
        Random random = new Random(7);
        int odd = 0;
        for (int i = 0; i < 400; i++) {
            double spacing = 100 + 10 * random.nextInt(11);
            double length = 1000 + random.nextInt(8000);
            double width = 900 + random.nextInt(4000);
            Comb comb = new Comb(length, width, spacing, EDGE);
            if (!comb.hasRoom()) {
                continue;
            }
            int columns = (int) ((length - 2 * EDGE) / spacing) + 1;
            int rows = (int) ((width - 2 * EDGE) / spacing) + 1;
            boolean both = columns % 2 == 1 && rows % 2 == 1;
            odd += both ? 1 : 0;
            String which = length + " x " + width + " at " + spacing;
            List<Point> corners = comb.corners();
            assertEquals(columns * rows - (both ? rows : 0), comb.places(), which);
            assertEquals(comb.places(), walked(corners, spacing, length, width).size(), which);
            Point first = corners.get(0);
            Point last = corners.get(corners.size() - 1);
            assertEquals(spacing, first.distance(last), 1e-6, which);
            assertTrue(comb.port().distance(first) < 1.2 * spacing + EDGE, which);
        }
        assertTrue(odd > 50, "floors of odd rows and columns: " + odd);
    }

    /** The places in order; fails where a step is none, leaves the floor or comes back to a place. */
    private static Set<List<Long>> walked(List<Point> corners, double spacing, double length, double width) {
        Set<List<Long>> seen = new HashSet<>();
        Point at = corners.get(0);
        assertTrue(seen.add(key(at)));
        for (Point to : corners.subList(1, corners.size())) {
            double steps = at.distance(to) / spacing;
            assertTrue(at.x() == to.x()
                    || at.y() == to.y()
                    || Math.abs(at.x() - to.x()) < 1e-6
                    || Math.abs(at.y() - to.y()) < 1e-6);
            assertEquals(Math.rint(steps), steps, 1e-6);
            for (int s = 1; s <= Math.rint(steps); s++) {
                Point next = new Point(at.x() + (to.x() - at.x()) * s / steps, at.y() + (to.y() - at.y()) * s / steps);
                assertTrue(seen.add(key(next)), () -> "twice at " + next);
                assertTrue(Math.min(next.x(), length - next.x()) >= EDGE - 1e-6, () -> "beside the floor " + next);
                assertTrue(Math.min(next.y(), width - next.y()) >= EDGE - 1e-6, () -> "beside the floor " + next);
            }
            at = to;
        }
        return seen;
    }

    private static List<Long> key(Point p) {
        return List.of(Math.round(p.x() * 100), Math.round(p.y() * 100));
    }
}
