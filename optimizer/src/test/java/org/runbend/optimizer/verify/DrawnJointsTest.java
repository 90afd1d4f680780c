package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.job.Point;

/** Paths at random, rounded as drawn, keep the rules of joints. */
class DrawnJointsTest {
    /** Whatever is drawn, the elements join without a kink, no leg is overrun, and what touches with one hand is one bend. */
    @Test
    void drawnAtRandom() {
        Random random = new Random(5);
        int tight = 0;
        for (int i = 0; i < 500; i++) {
            List<Point> path = wander(random);
            Breakdown loop = new Filleting().breakDownDrawn(path, 75);
            Findings findings = new Findings();
            new JointRules(0, findings).check(0, loop);
            assertEquals(List.of(), findings.all(), path::toString);
            assertEquals(0, path.get(0).distance(loop.elements().get(0).from()), 1e-9);
            Point end = loop.elements().get(loop.elements().size() - 1).to();
            assertEquals(0, path.get(path.size() - 1).distance(end), 1e-9);
            tight += loop.elements().stream().anyMatch(e -> e instanceof Element.Bend b && b.radius() < 74) ? 1 : 0;
        }
        assertTrue(tight > 100, tight + " paths had a leg that is shared");
    }

    private static List<Point> wander(Random random) {
        List<Point> path = new ArrayList<>(List.of(new Point(0, 0)));
        double heading = 0;
        for (int i = 0; i < 12; i++) {
            Point at = path.get(path.size() - 1);
            double step = 20 + random.nextInt(300);
            path.add(new Point(at.x() + step * Math.cos(heading), at.y() + step * Math.sin(heading)));
            heading += Math.toRadians(random.nextInt(3) == 0 ? 90 : random.nextInt(320) - 160);
        }
        return path;
    }
}
