package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.KitPlan;

class ServedFloorTest {
    /** Left of this, mm, the floor needs no heat in the trial. */
    private static final double COLD = 1350;

    @TempDir
    Path folder;

    /** Half of the floor needs no heat; pipe there serves nothing, and what is served is counted spot by spot, 10 mm apart. */
    @Test
    void pipeOnUnheatedFloorServesNothing() throws IOException {
        KitPlan plan = Sheds.plan(
                Sheds.job(
                        folder,
                        Sheds.SHED.replace(
                                "  port:",
                                "  unheated: [{name: wood store, polygon: [[0, 0], [1350, 0], [1350, 1650], [0, 1650]]}]\n  port:")));
        double reckoned = plan.loops().get(0).floorLength() * 150 / (1350.0 * 1650);
        assertTrue(reckoned > 1, "by length the share would be " + reckoned);
        assertEquals(100 * bySpots(plan), plan.served(), 0.5);
    }

    private static double bySpots(KitPlan plan) {
        int served = 0;
        int all = 0;
        for (double x = COLD + 5; x < 2700; x += 10) {
            for (double y = 5; y < 1650; y += 10) {
                Point spot = new Point(x, y);
                all++;
                served += plan.loops().get(0).breakdown().elements().stream().anyMatch(e -> reaches(e, spot)) ? 1 : 0;
            }
        }
        return (double) served / all;
    }

    /** Whether pipe on heated floor comes within 75 mm of a spot; looked at every 4 mm along the pipe. */
    private static boolean reaches(Element e, Point spot) {
        int steps = (int) Math.ceil(e.length() / 4);
        for (int i = 0; i <= steps; i++) {
            Point p = at(e, (double) i / steps);
            if (p.x() >= COLD && p.distance(spot) <= 75) {
                return true;
            }
        }
        return false;
    }

    private static Point at(Element e, double share) {
        if (e instanceof Element.Bend b) {
            double a = Math.atan2(
                            b.from().y() - b.centre().y(),
                            b.from().x() - b.centre().x())
                    + Math.toRadians(b.turn()) * share;
            return new Point(
                    b.centre().x() + b.radius() * Math.cos(a), b.centre().y() + b.radius() * Math.sin(a));
        }
        return new Point(
                e.from().x() + share * (e.to().x() - e.from().x()),
                e.from().y() + share * (e.to().y() - e.from().y()));
    }
}
