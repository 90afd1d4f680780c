package org.runbend.optimizer.cutting.patterns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.mip.Watch;
import org.runbend.optimizer.verify.CuttingVerifier;

/**
 * Coils of several lengths and opened ones against a dynamic program over all subsets of the cuts (Held and Karp 1962 for
 * the idea): cheapest way for each subset, one stock piece after the other. Shares nothing with the engine.
 */
class SubsetCuttingTest {
    private static final long NONE = Long.MAX_VALUE / 4;

    /** The levels after the cost are not looked at here. */
    private static final class UntilProved implements Watch {
        private volatile boolean proved;

        @Override
        public boolean asksForEnd() {
            return proved;
        }

        @Override
        public void learned(long cost, long bound) {
            proved = cost <= bound && cost < Long.MAX_VALUE;
        }
    }

    @Test
    void coilsAgreeWithAllSubsets() {
        Random random = new Random(40);
        int plans = 0;
        int tight = 0;
        for (int n = 0; n < 800; n++) {
            CuttingProblem problem = coils(random, 4 + random.nextInt(6));
            long expected = cheapest(problem);
            Answer<CuttingSolution> answer = new PatternCutting(new UntilProved()).solve(problem);
            if (expected == NONE) {
                assertInstanceOf(Answer.None.class, answer, problem::toString);
                continue;
            }
            plans++;
            CuttingSolution solution = answer.value().orElseThrow();
            assertEquals(List.of(), CuttingVerifier.verify(problem, solution), problem::toString);
            assertEquals(expected, solution.cost(), problem::toString);
            assertEquals(expected, solution.costBound().value(), problem::toString);
            tight += solution.costBound().proof() == Bound.Proof.MATERIAL ? 0 : 1;
        }
        assertTrue(plans > 600, "only " + plans + " cases had a plan");
        assertTrue(tight > 280, "only " + tight + " cases needed more than the material bound");
    }

    /** The greatest long means no plan at all and stays so; the next multiple of 100 would be below 0. */
    @Test
    void noPlanAtAllIsNotLifted() {
        CostSums sums = new CostSums(List.of(Stock.bought("coil", 100, 300), Stock.bought("coil", 80, 200)), 5000);
        assertEquals(Long.MAX_VALUE, sums.lift(Long.MAX_VALUE));
        assertEquals(200, sums.lift(1));
    }

    /** Forty orders, 0.1 m steps, five lengths and 12 opened coils: proved, and the same again. */
    @Test
    void fortyOrdersAreProved() {
        Random random = new Random(5);
        long[] metres = {50, 80, 100, 120, 200};
        long[] prices = {6500, 9900, 12100, 14300, 22900};
        List<Stock> stock = new ArrayList<>();
        for (int k = 0; k < metres.length; k++) {
            stock.add(Stock.bought("coil " + metres[k], metres[k] * 100_000, prices[k]));
        }
        for (int i = 0; i < 12; i++) {
            stock.add(Stock.single("opened", "C" + i, (100 + random.nextInt(900)) * 10_000L, 0));
        }
        List<Demand> demands = new ArrayList<>();
        for (int i = 0; i < 76; i++) {
            demands.add(new Demand("loop " + i, (200 + random.nextInt(1001)) * 10_000L, 1));
        }
        CuttingProblem problem = new CuttingProblem(stock, demands, 0, 50_000, 0);
        CuttingSolution solution =
                new PatternCutting(new UntilProved()).solve(problem).value().orElseThrow();
        assertEquals(List.of(), CuttingVerifier.verify(problem, solution));
        assertTrue(solution.isProvedLeastCost(), () -> solution.cost() + " above " + solution.costBound());
        assertEquals(
                solution,
                new PatternCutting(new UntilProved()).solve(problem).value().orElseThrow());
    }

    /** Cuts of 20 to 120 from three or four lengths, the number of some limited, and up to three opened ones. */
    private static CuttingProblem coils(Random random, int cuts) {
        List<Stock> stock = new ArrayList<>();
        int kinds = 2 + random.nextInt(3);
        for (int k = 0; k < kinds; k++) {
            long length = 60L + random.nextInt(140);
            long price = length * (9 + random.nextInt(4)) + random.nextInt(60);
            int available = random.nextInt(3) == 0 ? 1 + random.nextInt(3) : Stock.ANY;
            stock.add(new Stock("coil " + length, length, price, available, Optional.empty()));
        }
        int opened = random.nextInt(4);
        for (int i = 0; i < opened; i++) {
            stock.add(Stock.single("opened", "C" + i, 10L + random.nextInt(90), random.nextInt(2) * 50L));
        }
        List<Demand> demands = new ArrayList<>();
        for (int i = 0; i < cuts; i++) {
            demands.add(new Demand("loop " + i, 20L + random.nextInt(101), 1));
        }
        return new CuttingProblem(stock, demands, random.nextInt(2), random.nextInt(3), 0);
    }

    private static long cheapest(CuttingProblem p) {
        int all = 1 << p.demands().size();
        long[] best = new long[all];
        Arrays.fill(best, NONE);
        best[0] = 0;
        for (Stock s : p.stock()) {
            boolean[] fits = fits(p, s);
            int times = Math.min(s.available(), p.demands().size());
            for (int n = 0; n < times; n++) {
                long[] next = withOneMore(best, fits, s.cost());
                if (Arrays.equals(next, best)) {
                    break;
                }
                best = next;
            }
        }
        return best[all - 1];
    }

    private static boolean[] fits(CuttingProblem p, Stock s) {
        boolean[] fits = new boolean[1 << p.demands().size()];
        for (int mask = 1; mask < fits.length; mask++) {
            long taken = -p.kerf();
            for (int i = 0; i < p.demands().size(); i++) {
                taken += (mask >> i & 1) * (p.demands().get(i).length() + p.kerf());
            }
            fits[mask] = taken <= s.length() - p.endTrim();
        }
        return fits;
    }

    private static long[] withOneMore(long[] best, boolean[] fits, long cost) {
        long[] next = best.clone();
        for (int mask = 1; mask < best.length; mask++) {
            for (int taken = mask; taken > 0; taken = (taken - 1) & mask) {
                if (fits[taken] && best[mask ^ taken] < NONE) {
                    next[mask] = Math.min(next[mask], best[mask ^ taken] + cost);
                }
            }
        }
        return next;
    }
}
