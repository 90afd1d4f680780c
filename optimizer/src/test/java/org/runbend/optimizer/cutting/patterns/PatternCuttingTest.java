package org.runbend.optimizer.cutting.patterns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CuttingBruteForce;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.verify.CuttingVerifier;

class PatternCuttingTest {
    private static CuttingSolution solved(CuttingProblem problem) {
        CuttingSolution solution = new PatternCutting().solve(problem).value().orElseThrow();
        assertEquals(List.of(), CuttingVerifier.verify(problem, solution));
        return solution;
    }

    /** 97, 610, 395 and 211 cuts of 45, 36, 31 and 14 from rolls of 100: least 453 (Chvatal, Linear Programming, 1983, ch. 13; from memory: LP value 452.25). */
    @Test
    void rollsOfPaper() {
        CuttingProblem problem = new CuttingProblem(
                List.of(Stock.bought("roll", 100, 1)),
                List.of(
                        new Demand("a", 45, 97),
                        new Demand("b", 36, 610),
                        new Demand("c", 31, 395),
                        new Demand("d", 14, 211)),
                0,
                0,
                0);
        CuttingSolution solution = solved(problem);
        assertEquals(453, solution.cost());
        assertEquals(453, solution.costBound().value());
    }

    /** Two loops of 60 m: one coil of 120 m at 143 beats two of 80 m at 2 x 99; with 0.5 m of trim it no longer fits. */
    @Test
    void trimDecidesTheCoil() {
        List<Stock> coils = List.of(Stock.bought("80", 8_000_000, 99), Stock.bought("120", 12_000_000, 143));
        List<Demand> loops = List.of(new Demand("loop", 6_000_000, 2));
        CuttingSolution fits = solved(new CuttingProblem(coils, loops, 0, 0, 0));
        assertEquals(143, fits.cost());
        assertTrue(fits.isProvedBest());
        CuttingSolution trimmed = solved(new CuttingProblem(coils, loops, 0, 50_000, 0));
        assertEquals(198, trimmed.cost());
        assertTrue(trimmed.isProvedLeastCost());
    }

    /** Cuts 50, 40 and 30 from bars of 90 and 100 at one price: 50 + 40 on 90 and 30 on 90 leaves 60, kept from 60 up. */
    @Test
    void scrapDecidesAtEqualCost() {
        CuttingProblem problem = new CuttingProblem(
                List.of(Stock.bought("90", 90, 5), Stock.bought("100", 100, 5)),
                List.of(new Demand("a", 50, 1), new Demand("b", 40, 1), new Demand("c", 30, 1)),
                0,
                0,
                60);
        CuttingSolution solution = solved(problem);
        assertEquals(10, solution.cost());
        assertEquals(0, solution.scrap());
        assertTrue(solution.isProvedBest());
    }

    @Test
    void openedCoilGoesFirst() {
        CuttingProblem problem = new CuttingProblem(
                List.of(Stock.single("pipe", "C7", 65, 0), Stock.bought("pipe", 100, 80)),
                List.of(new Demand("a", 60, 1), new Demand("b", 50, 2)),
                0,
                0,
                0);
        CuttingSolution solution = solved(problem);
        assertEquals(80, solution.cost());
        assertTrue(solution.isProvedLeastCost());
    }

    @Test
    void nothingWanted() {
        CuttingProblem problem = new CuttingProblem(List.of(), List.of(new Demand("none", 10, 0)), 0, 0, 0);
        assertTrue(solved(problem).isProvedBest());
        assertEquals(0, solved(problem).cost());
    }

    @Test
    void longerThanAnyStock() {
        CuttingProblem problem = new CuttingProblem(
                List.of(Stock.bought("coil", 10_000, 5), new Stock("gone", 90_000, 1, 0, Optional.empty())),
                List.of(new Demand("loop 1", 10_001, 1)),
                0,
                0,
                0);
        Answer<?> none = assertInstanceOf(Answer.None.class, new PatternCutting().solve(problem));
        assertEquals("cut loop 1 of 100.01 mm is longer than any stock allows (100.00 mm)", none.reason());
    }

    @Test
    void notEnoughStock() {
        CuttingProblem problem = new CuttingProblem(
                List.of(new Stock("bar", 100, 5, 2, Optional.empty())), List.of(new Demand("a", 60, 3)), 0, 0, 0);
        assertInstanceOf(Answer.None.class, new PatternCutting().solve(problem));
    }

    @Test
    void priceNothing() {
        CuttingProblem problem =
                new CuttingProblem(List.of(Stock.bought("bar", 100, 0)), List.of(new Demand("a", 60, 3)), 3, 0, 0);
        CuttingSolution solution = solved(problem);
        assertEquals(3, solution.cuts().size());
        assertTrue(solution.isProvedBest());
    }

    @Test
    void absurdCountIsRefused() {
        List<Demand> many = List.of(new Demand("a", 60, 1_000_000_000));
        assertThrows(
                IllegalArgumentException.class,
                () -> new CuttingProblem(List.of(Stock.bought("bar", 100, 1)), many, 0, 0, 0));
    }

    @Test
    void agreesWithBruteForce() {
        Random random = new Random(7);
        int plans = 0;
        int proved = 0;
        for (int n = 0; n < 1200; n++) {
            CuttingProblem problem = small(random);
            long[] expected = new CuttingBruteForce(problem).best();
            Answer<CuttingSolution> answer = new PatternCutting().solve(problem);
            if (expected.length == 0) {
                assertInstanceOf(Answer.None.class, answer, problem.toString());
                continue;
            }
            plans++;
            CuttingSolution solution = answer.value().orElseThrow();
            assertEquals(List.of(), CuttingVerifier.verify(problem, solution));
            assertEquals(expected[0], solution.cost(), problem::toString);
            assertEquals(expected[0], solution.costBound().value(), problem::toString);
            assertEquals(expected[1], solution.scrap(), problem::toString);
            assertEquals(expected[1], solution.scrapBound().value(), problem::toString);
            assertEquals(expected[2], solution.opened(), problem::toString);
            assertEquals(expected[3], solution.patterns(), problem::toString);
            if (solution.openedBound().proof() == Bound.Proof.INTEGER_PROGRAM) {
                assertEquals(expected[2], solution.openedBound().value(), problem::toString);
                proved++;
            }
        }
        assertTrue(plans > 625, "only " + plans + " cases had a plan");
        assertTrue(proved > 500, "only " + proved + " cases were proved on the third level");
    }

    private static CuttingProblem small(Random random) {
        List<Stock> stock = new ArrayList<>();
        int kinds = 1 + random.nextInt(3);
        for (int k = 0; k < kinds; k++) {
            long length = 20L + random.nextInt(40);
            stock.add(
                    random.nextInt(3) == 0
                            ? Stock.single("s" + k, "id" + k, length, random.nextInt(3))
                            : Stock.bought("s" + k, length, random.nextInt(12)));
        }
        List<Demand> demands = new ArrayList<>();
        int sizes = 1 + random.nextInt(4);
        for (int d = 0; d < sizes; d++) {
            demands.add(new Demand("d" + d, 5L + random.nextInt(30), random.nextInt(3)));
        }
        return new CuttingProblem(stock, demands, random.nextInt(3), random.nextInt(4), random.nextInt(25));
    }
}
