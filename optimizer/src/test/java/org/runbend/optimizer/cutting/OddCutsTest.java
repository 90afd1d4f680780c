package org.runbend.optimizer.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.cover.CoverCutting;
import org.runbend.optimizer.cutting.patterns.PatternCutting;
import org.runbend.optimizer.verify.CoverVerifier;
import org.runbend.optimizer.verify.CuttingVerifier;

/** Odd input: the right answer, or one clear sentence. */
class OddCutsTest {
    private static CuttingSolution solved(CuttingProblem problem) {
        CuttingSolution solution = new PatternCutting().solve(problem).value().orElseThrow();
        assertEquals(List.of(), CuttingVerifier.verify(problem, solution));
        return solution;
    }

    /** 30 cuts of one size, named apart, three from a bar of 100 (3 x 30 + 2 x 2 = 94): 10 bars. */
    @Test
    void equalSizes() {
        List<Demand> equal = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            equal.add(new Demand("order " + i, 30, 1));
        }
        CuttingSolution solution = solved(new CuttingProblem(List.of(Stock.bought("bar", 100, 7)), equal, 2, 0, 0));
        assertEquals(70, solution.cost());
        assertEquals(70, solution.costBound().value());
        assertEquals(1, solution.patterns());
    }

    /** The only bar takes 60 and 40 without a kerf; with one there is no plan. */
    @Test
    void oneBarAlone() {
        List<Demand> two = List.of(new Demand("a", 60, 1), new Demand("b", 40, 1));
        List<Stock> one = List.of(Stock.single("bar", "B1", 100, 9));
        assertEquals(9, solved(new CuttingProblem(one, two, 0, 0, 0)).cost());
        assertInstanceOf(Answer.None.class, new PatternCutting().solve(new CuttingProblem(one, two, 1, 0, 0)));
    }

    /** A cut as long as its stock, and a trim that takes the whole stock. */
    @Test
    void nothingLeftOver() {
        List<Demand> whole = List.of(new Demand("a", 100, 2));
        assertEquals(
                6,
                solved(new CuttingProblem(List.of(Stock.bought("bar", 100, 3)), whole, 5, 0, 0))
                        .cost());
        assertInstanceOf(
                Answer.None.class,
                new PatternCutting().solve(new CuttingProblem(List.of(Stock.bought("bar", 100, 3)), whole, 5, 100, 0)));
    }

    @Test
    void noStockAtAll() {
        CuttingProblem none = new CuttingProblem(List.of(), List.of(new Demand("a", 10, 1)), 0, 0, 0);
        assertInstanceOf(Answer.None.class, new PatternCutting().solve(none));
    }

    /** The greatest number of cuts that is taken, in one pattern: 1,000,000 of 30, three from a bar. */
    @Test
    void aMillionCuts() {
        int most = CuttingProblem.GREATEST_COUNT;
        CuttingSolution solution = solved(
                new CuttingProblem(List.of(Stock.bought("bar", 100, 1)), List.of(new Demand("a", 30, most)), 0, 0, 0));
        assertEquals((most + 2) / 3, solution.cost());
        assertTrue(solution.isProvedLeastCost());
        assertThrows(
                IllegalArgumentException.class,
                () -> new CuttingProblem(
                        List.of(Stock.bought("bar", 100, 1)), List.of(new Demand("a", 30, 1_000_000_000)), 0, 0, 0));
    }

    /** 500 seeded problems of odd numbers: an answer that the verifier has nothing against, or one sentence. */
    @Test
    void oddNumbers() {
        Random random = new Random(31);
        long[] odd = {0, 1, 2, 3, 50, 99, 100, 101, 1000, 100_000, 1_000_000_000L, 1_000_000_001L, -1};
        int refused = 0;
        int plans = 0;
        for (int n = 0; n < 500; n++) {
            CuttingProblem problem;
            try {
                problem = odd(random, odd);
            } catch (IllegalArgumentException e) {
                assertFalse(e.getMessage().isBlank());
                refused++;
                continue;
            }
            Answer<CuttingSolution> answer = new PatternCutting().solve(problem);
            if (answer instanceof Answer.Found<CuttingSolution> found) {
                CuttingSolution solution = found.it();
                assertEquals(List.of(), CuttingVerifier.verify(problem, solution), problem::toString);
                plans++;
            } else {
                assertFalse(answer.reason().isBlank());
            }
        }
        assertTrue(refused > 50 && plans > 50, refused + " refused, " + plans + " plans");
    }

    private static CuttingProblem odd(Random random, long[] odd) {
        List<Stock> stock = new ArrayList<>();
        for (int k = random.nextInt(3); k >= 0; k--) {
            stock.add(new Stock(
                    "s" + k,
                    pick(random, odd),
                    pick(random, odd),
                    (int) Math.min(1000, pick(random, odd)),
                    Optional.empty()));
        }
        List<Demand> demands = new ArrayList<>();
        for (int d = random.nextInt(3); d >= 0; d--) {
            demands.add(new Demand("d" + d, pick(random, odd), random.nextInt(5)));
        }
        return new CuttingProblem(
                stock,
                demands,
                Math.abs(pick(random, odd)) % 200,
                Math.abs(pick(random, odd)) % 200,
                random.nextInt(50));
    }

    /** Mostly usual numbers, so that not all problems are refused. */
    private static long pick(Random random, long[] odd) {
        return random.nextInt(4) == 0 ? odd[random.nextInt(odd.length)] : 1 + random.nextInt(120);
    }

    /** The same for covers. */
    @Test
    void oddCovers() {
        Random random = new Random(37);
        long[] odd = {0, 1, 2, 7, 50, 100, 1000, 1_000_000_001L, -1};
        int refused = 0;
        int plans = 0;
        for (int n = 0; n < 150; n++) {
            CoverProblem problem;
            try {
                problem = oddCover(random, odd);
            } catch (IllegalArgumentException e) {
                assertFalse(e.getMessage().isBlank());
                refused++;
                continue;
            }
            Answer<CoverSolution> answer = new CoverCutting().solve(problem);
            if (answer instanceof Answer.Found<CoverSolution> found) {
                CoverSolution solution = found.it();
                assertEquals(List.of(), CoverVerifier.verify(problem, solution), problem::toString);
                plans++;
            } else {
                assertFalse(answer.reason().isBlank());
            }
        }
        assertTrue(refused > 20 && plans > 20, refused + " refused, " + plans + " plans");
    }

    private static CoverProblem oddCover(Random random, long[] odd) {
        List<Stock> stock = new ArrayList<>();
        for (int k = random.nextInt(2); k >= 0; k--) {
            stock.add(new Stock("s" + k, pick(random, odd), pick(random, odd), random.nextInt(40), Optional.empty()));
        }
        List<Stretch> stretches = new ArrayList<>();
        long all = 0;
        for (int r = random.nextInt(4); r > 0; r--) {
            long length = pick(random, odd) % 2000;
            stretches.add(new Stretch(length, random.nextInt(3) == 0 ? length / 2 : 0));
            all += length;
        }
        return new CoverProblem(
                stretches,
                stock,
                pick(random, odd) % 20,
                pick(random, odd) % 60,
                pick(random, odd),
                pick(random, odd) % 15,
                pick(random, odd) % 10,
                (long) (all * random.nextDouble() * 1.1),
                random.nextInt(3));
    }
}
