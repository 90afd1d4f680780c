package org.runbend.optimizer.cutting.patterns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.verify.CuttingVerifier;

/** Seeded instances made by the published definitions of classes of the cutting stock problem. */
class InstanceClassesTest {
    private static CuttingSolution solved(long stock, List<Long> sizes) {
        List<Demand> demands =
                sizes.stream().map(s -> new Demand("size " + s, s, 1)).toList();
        CuttingProblem problem = new CuttingProblem(List.of(Stock.bought("stock", stock, 1)), demands, 0, 0, 0);
        CuttingSolution solution = new PatternCutting().solve(problem).value().orElseThrow();
        assertEquals(List.of(), CuttingVerifier.verify(problem, solution));
        long material =
                -Math.floorDiv(-sizes.stream().mapToLong(Long::longValue).sum(), stock);
        assertTrue(solution.cost() >= material, "fewer than the material allows");
        return solution;
    }

    private static List<Long> uniform(Random random, int n, int from, int to) {
        List<Long> sizes = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            sizes.add((long) from + random.nextInt(to - from + 1));
        }
        return sizes;
    }

    /** Uniform 20 to 100 in 150 (Falkenauer 1996, https://doi.org/10.1007/BF00226291, class u). */
    @Test
    void falkenauerUniform() {
        for (int seed = 1; seed <= 5; seed++) {
            assertTrue(solved(150, uniform(new Random(seed), 120, 20, 100)).isProvedLeastCost());
        }
    }

    /** Triplets that fill 1000 exactly, so that a third of the number is the optimum by construction (same paper, class t). */
    @Test
    void falkenauerTriplets() {
        for (int seed = 1; seed <= 3; seed++) {
            Random random = new Random(seed);
            List<Long> sizes = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                long first = 380L + random.nextInt(111);
                long second = 250L + random.nextInt((int) (1000 - first) / 2 - 249);
                sizes.addAll(List.of(first, second, 1000 - first - second));
            }
            CuttingSolution solution = solved(1000, sizes);
            assertEquals(20, solution.cost());
            assertEquals(20, solution.costBound().value());
        }
    }

    /** Uniform 1 to 100 in 100, 120 and 150 (Scholl, Klein and Juergens 1997, https://doi.org/10.1016/S0305-0548(96)00082-2, set 1). */
    @Test
    void schollOne() {
        for (int stock : new int[] {100, 120, 150}) {
            assertTrue(solved(stock, uniform(new Random(stock), 100, 1, 100)).isProvedLeastCost());
        }
    }

    /** Means of a fifth of 1000 within 20 % (same paper, set 2). */
    @Test
    void schollTwo() {
        assertTrue(solved(1000, uniform(new Random(2), 100, 160, 240)).isProvedLeastCost());
    }

    /** 100 of 150 to 200 in 1000 (Schwerin and Waescher 1997, https://doi.org/10.1111/j.1475-3995.1997.tb00071.x). */
    @Test
    void schwerin() {
        assertTrue(solved(1000, uniform(new Random(3), 100, 150, 200)).isProvedLeastCost());
    }

    /** Few long and many short sizes in 10000, in the style of Waescher and Gau 1996. */
    @Test
    void waescherStyle() {
        assertTrue(solved(10_000, uniform(new Random(4), 80, 2, 5000)).isProvedLeastCost());
    }

    /** Uniform 1 to 800 in 1000, where rounding an LP value up would often be one too many or too few. */
    @Test
    void wideSizes() {
        assertTrue(solved(1000, uniform(new Random(5), 80, 1, 800)).isProvedLeastCost());
    }

    /**
     * 25 of 3, 20 of 5 and 15 of 9 from 17: each 9 takes 5 + 3 along, which leaves 5 of 5 and 10 of 3; 5 + 4 x 3 twice,
     * 5 + 5 + 5 and 3 + 3 are four more: 19, and 310 / 17 is over 18. (Sizes of a textbook example by Winston, Operations
     * Research, from memory; the answer is worked by hand.)
     */
    @Test
    void boardsOfSeventeen() {
        List<Long> sizes = new ArrayList<>();
        sizes.addAll(Collections.nCopies(25, 3L));
        sizes.addAll(Collections.nCopies(20, 5L));
        sizes.addAll(Collections.nCopies(15, 9L));
        CuttingSolution solution = solved(17, sizes);
        assertEquals(19, solution.cost());
        assertEquals(19, solution.costBound().value());
    }
}
