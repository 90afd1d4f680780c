package org.runbend.optimizer.cutting.cover;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/** Bounds from prices as a floating-point program may propose them. */
class CoverDualsTest {
    /** Whatever the prices, the bound is one: 20 stretches of 3 m take 50 plates of 1.2 m, none of which is free. */
    @Test
    void absurdPricesGiveABoundAllTheSame() {
        List<Stretch> stretches = java.util.Collections.nCopies(20, new Stretch(300_000, 0));
        CoverProblem problem = new CoverProblem(
                stretches,
                List.of(Stock.bought("P", 120_000, 310)),
                500,
                15_000,
                Long.MAX_VALUE,
                1_000,
                300,
                5_000_000,
                0);
        CoverGrid grid = new CoverGrid(problem);
        for (double tau : new double[] {0, 1e-9, 0.001, 1, 1e6, 1e18, Double.MAX_VALUE}) {
            for (double price : new double[] {0, 0.01, 1, 310, 1e12}) {
                double[] pi = new double[grid.most() + 1];
                Arrays.fill(pi, price);
                long bound = new CoverDuals(grid, pi, tau).bound();
                // 50 m at 1.2 m a plate and a gap of 5 mm with each: 42 plates would do with nothing lost
                assertTrue(bound >= 0 && bound <= 50 * 310, tau + " and " + price + ": " + bound);
            }
        }
    }
}
