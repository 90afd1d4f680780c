package org.runbend.optimizer.cutting.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.CoverBruteForce;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.FewLengthsProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.mip.Watch;
import org.runbend.optimizer.verify.CoverVerifier;

class FewLengthsCuttingTest {
    private static final long MM = 100;
    private static final Stock PLATE = Stock.bought("plate 1200", 1200 * MM, 600);

    private static CoverProblem problem(long gap, long kerf, long target, long... stretches) {
        List<Stretch> list =
                LongStream.of(stretches).mapToObj(l -> new Stretch(l * MM)).toList();
        return new CoverProblem(
                list, List.of(PLATE), gap * MM, 150 * MM, Long.MAX_VALUE, 10 * MM, kerf * MM, target * MM);
    }

    private static FewLengthsCurve solved(CoverProblem cover, int most) {
        FewLengthsCurve curve = new FewLengthsCutting().solve(new FewLengthsProblem(cover, List.of(), most));
        long before = Long.MAX_VALUE;
        for (FewLengthsCurve.Point p : curve.points()) {
            if (p.answer() instanceof Answer.Found<CoverSolution> found) {
                CoverSolution plan = found.it();
                assertEquals(List.of(), CoverVerifier.verify(cover, plan), cover::toString);
                assertTrue(lengths(plan) <= p.lengths(), () -> lengths(plan) + " lengths, allowed " + p.lengths());
                assertTrue(plan.cost() <= before, "costs rise with the lengths");
                before = plan.cost();
            }
        }
        return curve;
    }

    private static long lengths(CoverSolution plan) {
        return plan.pieces().stream().flatMap(List::stream).distinct().count();
    }

    private static CoverSolution at(FewLengthsCurve curve, int lengths) {
        return curve.at(lengths).answer().value().orElseThrow();
    }

    /**
     * Runs of 700, 700, 490 and 490 to be covered whole, kerf 3: a plate gives 700 and 490 (1193 of 1200), so two plates do
     * with two lengths. With one length: pieces of u <= 490 cover each run whole only if u + 5 divides 705 and 495, that is
     * u + 5 = 15 or less; under 150 there is none.
     */
    @Test
    void twoLengthsWhereOneWillNotDo() {
        CoverProblem cover = problem(5, 3, 2380, 700, 700, 490, 490);
        FewLengthsCurve curve = solved(cover, 3);
        assertInstanceOf(Answer.None.class, curve.at(1).answer());
        assertEquals(1200, at(curve, 2).cost());
        assertEquals(1200, at(curve, 2).bound().value());
    }

    /**
     * Two runs of 1200 to be covered as to 1600 mm. In one length of 800: one piece on each run, each from a plate of its own
     * (two need 1603): 2 plates. In 395: 3 a run cover 1195, 3 from a plate (1191): 5 pieces cover 1195 + 795 = 1990 and 4
     * cover 1590 at most, so 2 plates too; one plate covers at most 1200 + 2 x 5. Two plates is the least for any lengths.
     */
    @Test
    void oneLengthAtTheCostOfAny() {
        FewLengthsCurve curve = solved(problem(5, 3, 1600, 1200, 1200), 4);
        assertEquals(1200, at(curve, 1).cost());
        assertTrue(at(curve, 1).isProvedLeastCost());
        assertTrue(
                curve.points().stream()
                        .skip(1)
                        .allMatch(p -> at(curve, p.lengths()).pieceCount()
                                < at(curve, 1).pieceCount()),
                "more lengths save nothing but pieces");
    }

    /**
     * Runs of 1300, 1300 and 430, all of it (3030) asked for. A run of 1300 takes 3 pieces at most, so one length must be 430:
     * 3 x 430 + 2 x 5 = 1300. Seven pieces, two from a plate (2 x 430 + 3 = 863, a third does not fit): 4 plates.
     */
    @Test
    void oneLengthOnAllRuns() {
        FewLengthsCurve curve = solved(problem(5, 3, 3030, 1300, 1300, 430), 3);
        CoverSolution plan = at(curve, 1);
        assertEquals(2400, plan.cost());
        assertEquals(2400, plan.bound().value());
        assertEquals(7, plan.pieceCount());
        assertEquals(3030 * MM, plan.covered());
        assertTrue(at(curve, 3).cost() <= 1800, "1200, 870, 425 of three plates and less");
        assertInstanceOf(
                Answer.None.class,
                solved(problem(5, 3, 3040, 1300, 1300, 440), 1).at(1).answer());
    }

    /** With 300 in use already, runs of 300 are covered by it and only one more length may be new. */
    @Test
    void lengthsInUseCount() {
        CoverProblem cover = problem(5, 3, 1500, 300, 1200);
        FewLengthsCurve curve = new FewLengthsCutting().solve(new FewLengthsProblem(cover, List.of(300 * MM), 2));
        CoverSolution plan = at(curve, 2);
        assertEquals(List.of(), CoverVerifier.verify(cover, plan));
        assertEquals(1200, plan.cost());
        List<Long> used =
                plan.pieces().stream().flatMap(List::stream).distinct().sorted().toList();
        assertEquals(List.of(300 * MM, 1200 * MM), used);
        assertThrows(
                IllegalArgumentException.class,
                () -> new FewLengthsProblem(cover, List.of(300 * MM, 310 * MM), 1),
                "two are in use");
    }

    /** Seeded small cases; brute force tries every set of one, two and three lengths. */
    @Test
    void againstBruteForce() {
        Random random = new Random(7);
        int[] possible = new int[4];
        int[] least = new int[4];
        for (int n = 0; n < 120; n++) {
            CoverProblem cover = small(random);
            FewLengthsCurve curve = solved(cover, 3);
            for (int lengths = 1; lengths <= 3; lengths++) {
                long expected = new CoverBruteForce(cover, lengths).best();
                Answer<CoverSolution> answer = curve.at(lengths).answer();
                if (answer instanceof Answer.Found<CoverSolution> found) {
                    CoverSolution plan = found.it();
                    assertTrue(plan.cost() >= expected && plan.bound().value() <= expected, cover::toString);
                    least[lengths] += plan.cost() == expected ? 1 : 0;
                } else {
                    assertTrue(
                            answer instanceof Answer.Unknown<CoverSolution> || expected == Long.MAX_VALUE,
                            cover::toString);
                }
                possible[lengths] += expected < Long.MAX_VALUE ? 1 : 0;
            }
        }
        for (int lengths = 1; lengths <= 3; lengths++) {
            assertTrue(possible[lengths] > 60, "only " + possible[lengths] + " had a plan");
            int missed = possible[lengths] - least[lengths];
            assertTrue(
                    missed <= possible[lengths] / 100, missed + " plans of " + lengths + " lengths are not the best");
        }
    }

    private static CoverProblem small(Random random) {
        List<Stock> stock = new ArrayList<>();
        for (int k = 0; k < 1 + random.nextInt(2); k++) {
            stock.add(Stock.bought("s" + k, 5L + random.nextInt(6), 1L + random.nextInt(9)));
        }
        if (random.nextInt(4) == 0) {
            stock.add(Stock.single("offcut", "O1", 4L + random.nextInt(5), 0));
        }
        List<Stretch> stretches = new ArrayList<>();
        for (int r = 0; r < 1 + random.nextInt(3); r++) {
            long length = 3L + random.nextInt(7);
            stretches.add(new Stretch(length, random.nextInt(4) == 0 ? random.nextInt((int) length - 1) : 0));
        }
        long all = stretches.stream().mapToLong(Stretch::length).sum();
        long target = (long) (all * (0.5 + 0.4 * random.nextDouble()));
        return new CoverProblem(
                stretches, stock, random.nextInt(2), 2, Long.MAX_VALUE, 1, random.nextInt(2), target, 1);
    }

    /** Twelve runs as on a floor: more lengths never cost more, and a few do what any number does. */
    @Test
    void fewLengthsDoOnAUsualFloor() {
        long[] runs = new Random(5).longs(12, 300, 2900).toArray();
        long target = (long) (0.85 * LongStream.of(runs).map(r -> r - 10).sum());
        CoverProblem cover = problem(5, 3, target, runs);
        FewLengthsCurve curve = solved(cover, 6);
        CoverSolution free = curve.free().value().orElseThrow();
        assertEquals(free.cost(), at(curve, 6).cost());
        assertTrue(lengths(free)
                > 2L * curve.points().get(curve.points().size() - 1).lengths());
        assertEquals(curve, solved(cover, 6));
    }

    /** Step 1 mm leaves over a thousand sizes to choose from. */
    @Test
    void fineSteps() {
        List<Stretch> runs = LongStream.of(1733, 911, 911, 622, 1544)
                .mapToObj(l -> new Stretch(l * MM))
                .toList();
        CoverProblem cover = new CoverProblem(runs, List.of(PLATE), 500, 15_000, Long.MAX_VALUE, 100, 300, 450_000);
        FewLengthsCurve curve = solved(cover, 4);
        assertEquals(curve.free().value().orElseThrow().cost(), at(curve, 4).cost());
    }

    @Test
    void nothingAskedFor() {
        CoverSolution none = at(solved(problem(5, 3, 0, 900), 2), 1);
        assertEquals(0, none.cost());
        assertEquals(0, none.pieceCount());
    }

    @Test
    void endsWhenTheThreadIsInterrupted() {
        CoverProblem cover = problem(5, 3, 1600, 1200, 1200);
        Thread.currentThread().interrupt();
        try {
            assertThrows(CancellationException.class, () -> new CoverCutting().solve(cover));
            assertThrows(CancellationException.class, () -> new FewLengthsCutting()
                    .solve(new FewLengthsProblem(cover, List.of(), 2)));
            assertTrue(Thread.currentThread().isInterrupted(), "the flag was cleared");
        } finally {
            Thread.interrupted();
        }
    }

    /** A watch that asks for an end after the first plan gets that plan, sound and with a sound bound. */
    @Test
    void endsWithTheBestSoFar() {
        long[] runs = new Random(5).longs(30, 300, 2900).toArray();
        long target = (long) (0.97 * LongStream.of(runs).map(r -> r - 10).sum());
        CoverProblem cover = problem(5, 3, target, runs);
        boolean[] heard = {false};
        Answer<CoverSolution> early = new CoverCutting(new Watch() {
                    @Override
                    public boolean asksForEnd() {
                        return heard[0];
                    }

                    @Override
                    public void learned(long cost, long bound) {
                        heard[0] |= cost < Long.MAX_VALUE;
                    }
                })
                .solve(cover);
        CoverSolution plan = early.value().orElseThrow();
        CoverSolution full = new CoverCutting().solve(cover).value().orElseThrow();
        assertEquals(List.of(), CoverVerifier.verify(cover, plan));
        assertTrue(plan.cost() > full.cost(), plan.cost() + " was not early");
        assertTrue(plan.bound().value() <= full.cost());
    }
}
