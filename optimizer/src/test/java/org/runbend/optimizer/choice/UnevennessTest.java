package org.runbend.optimizer.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.job.Point;

/** Warmth of loops whose spread can be reckoned by hand. */
class UnevennessTest {
    /** Out and back: every place lies beside one that is as much cooler as it is warmer than the middle. */
    @Test
    void flowBesideReturnIsEven() {
        List<Point> hairpin = new ArrayList<>();
        for (int i = 0; i <= 20; i++) {
            hairpin.add(new Point(150 * i, 0));
        }
        for (int i = 20; i >= 0; i--) {
            hairpin.add(new Point(150 * i, 150));
        }
        assertEquals(0, unevenness(hairpin), 1e-9);
    }

    /**
     * One straight pipe has every warmth from 1 to 0: the deviation of an even distribution is 1/sqrt(12) (textbook value);
     * of the middles of n equal steps it is sqrt((1 - 1/n^2)/12), here n = 40.
     */
    @Test
    void aSinglePipeHasEveryWarmth() {
        Breakdown straight = new Breakdown(List.of(new Element.Run(new Point(0, 0), new Point(6000, 0))));
        assertEquals(Math.sqrt((1 - 1 / 1600.0) / 12), Unevenness.of(150, List.of(straight)), 1e-9);
    }

    /** Forth and back over the floor: a place and its two neighbours are alike, so it is nearly as bad as a single pipe. */
    @Test
    void windingFromEndToEndIsUneven() {
        List<Point> rows = new ArrayList<>();
        for (int row = 0; row < 20; row++) {
            for (int i = 0; i <= 10; i++) {
                rows.add(new Point(150 * (row % 2 == 0 ? i : 10 - i), 150 * row));
            }
        }
        double found = unevenness(rows);
        assertTrue(found > 0.27 && found < 1 / Math.sqrt(12), () -> "unevenness " + found);
    }

    private static double unevenness(List<Point> path) {
        return Unevenness.of(150, List.of(new Filleting().breakDown(path, 75)));
    }
}
