package org.runbend.optimizer.plates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.job.Job;

class PlateCurvesTest {
    private static final SpreaderPlate SINGLE = Rows.plate(1, 1200, 1500, 3, 10);
    private static final SpreaderPlate TWIN = Rows.plate(2, 1200, 2600, 3, 10);

    private static PlateProblem problem(Random random, SpreaderPlate... plates) {
        double[] rows = random.doubles(7, 300, 2600).map(Math::rint).toArray();
        return Rows.problem(
                new Job.PlateRequest(List.of(plates), Job.Share.of(0.85), new Job.Gaps(0, 5, 5), Job.Pieces.from(150)),
                rows);
    }

    private static PlateProblem with(PlateProblem problem, Job.PlateRequest request) {
        return new PlateProblem(problem.floor(), request, problem.shelf(), problem.loops());
    }

    /** Each point is held against a plan of its own at that coverage, and against the verifier. */
    @Test
    void coverageCurveAgainstSeparatePlans() {
        Random random = new Random(17);
        for (SpreaderPlate[] plates : new SpreaderPlate[][] {{SINGLE}, {SINGLE}, {SINGLE, TWIN}}) {
            PlateProblem problem = problem(random, plates);
            List<CoverageCurve.Point> curve = new CoverageCurve().of(problem, new PlatePacking().pack(problem));
            assertEquals(
                    List.of(0.7, 0.8, 0.85, 0.9, 0.95, 1.0),
                    curve.stream().map(CoverageCurve.Point::asked).toList());
            long before = 0;
            for (CoverageCurve.Point point : curve) {
                PlateProblem own =
                        with(problem, problem.request().with(problem.request().products(), point.asked()));
                PlatePlan alone = new PlatePacking().pack(own);
                assertEquals(List.of(), Rows.broken(own, point.plates()));
                boolean twins = plates.length > 1;
                assertTrue(
                        point.plates().objective() <= alone.objective() * (twins ? 1.05 : 1),
                        "dearer than a plan of its own");
                assertEquals(alone.bound(), point.plates().bound());
                assertTrue(point.plates().objective() >= before, "costs fall with the coverage");
                before = point.plates().objective();
            }
        }
    }

    /** The curve of lengths ends at the cost of the plan without a limit; every plan keeps its limit and its coverage. */
    @Test
    void lengthCurve() {
        Random random = new Random(23);
        for (SpreaderPlate[] plates : new SpreaderPlate[][] {{SINGLE}, {SINGLE}, {SINGLE, TWIN}}) {
            PlateProblem problem = problem(random, plates);
            List<LengthCurve.Point> curve = new LengthCurve().of(problem);
            PlatePlan free = new PlatePacking().pack(problem);
            LengthCurve.Point last = curve.get(curve.size() - 1);
            assertTrue(curve.size() > 1, "nothing to compare");
            assertEquals(OptionalInt.empty(), last.limit());
            assertTrue(last.plates().bought() <= free.bought(), "dearer than the plan itself");
            long before = Long.MAX_VALUE;
            for (LengthCurve.Point point : curve) {
                PlateProblem own = with(problem, problem.request().withLengths(point.limit()));
                assertEquals(List.of(), Rows.broken(own, point.plates()));
                assertTrue(point.plates().bought() <= before, "costs rise with the lengths");
                assertTrue(
                        point.plates().bound() >= free.bound() || point.limit().isEmpty());
                before = point.plates().bought();
            }
        }
    }

    /** A plan asked for in few lengths is that of the curve. */
    @Test
    void maxLengthsIsAPointOfTheCurve() {
        PlateProblem problem = problem(new Random(29), SINGLE);
        for (LengthCurve.Point point : new LengthCurve().of(problem)) {
            PlatePlan asked =
                    new PlatePacking().pack(with(problem, problem.request().withLengths(point.limit())));
            assertEquals(asked.bought(), point.plates().bought());
        }
    }
}
