package org.runbend.optimizer.plates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Labour;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.job.Job;

/** Plates are chosen by material and saw work, and lie in a pattern. */
class TidyPlatesTest {
    private static final SpreaderPlate SINGLE = Rows.plate(1, 1200, 310, 3, 10);
    private static final SpreaderPlate TWIN = Rows.plate(2, 1200, 560, 3, 10);
    private static final Labour LABOUR = new Labour(20, 60, 180, OptionalLong.of(4200));

    private static PlateProblem problem(SpreaderPlate plate, double... rows) {
        Job.PlateRequest request =
                new Job.PlateRequest(List.of(plate), Job.Share.of(0.85), new Job.Gaps(0, 5, 5), Job.Pieces.from(150));
        return new PlateProblem(Rows.floor(), request, new Shelf(List.of()), Rows.of(rows), Optional.of(LABOUR));
    }

    /** Material, then what cuts and stops take at 42.00 an hour: reckoned here from the plan alone. */
    private static long objective(PlatePlan plan) {
        double seconds = 20.0 * plan.sawCuts() + 60.0 * plan.stopSettings();
        return plan.bought() + (long) Math.ceil(seconds / 3600 * 4200 - 1e-9);
    }

    /** No row of a plan's own table costs less in material and work than what is delivered. */
    @Test
    void nothingInItsOwnTableIsBetter() {
        Random random = new Random(41);
        for (int trial = 0; trial < 6; trial++) {
            double[] rows = random.doubles(9, 300, 2600).map(Math::rint).toArray();
            PlateProblem problem = problem(SINGLE, rows);
            PlatePacking.Packed packed = new PlatePacking().packAndCompare(problem);
            assertEquals(List.of(), Rows.broken(problem, packed.plan()));
            assertEquals(objective(packed.plan()), packed.plan().objective());
            assertTrue(packed.plan().objectiveBound().orElseThrow()
                    <= packed.plan().objective());
            for (LengthCurve.Point p : packed.lengths()) {
                assertEquals(List.of(), Rows.broken(problem, p.plates()));
                assertTrue(objective(packed.plan()) <= objective(p.plates()), "a row of the table is better");
            }
        }
    }

    /** Twelve rows of 1000: 10098 mm are asked for, nine plates of 1000 + 190 give 10710. */
    @Test
    void alikeRowsAreCutAlike() {
        PlatePlan plan = new PlatePacking()
                .pack(problem(SINGLE, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000));
        assertTrue(plan.lengths().size() <= 2, () -> "lengths " + plan.lengths());
        assertEquals(2790, plan.bought(), "nine plates, as many as the material takes");
    }

    /** Rows of one length are plated alike, and what is left of a row lies in equal parts at both of its ends. */
    @Test
    void piecesAreCentredAndInLine() {
        PlateProblem problem = problem(SINGLE, 1300, 1300, 1300, 1300);
        PlatePlan plan = new PlatePacking().pack(problem);
        assertEquals(List.of(), Rows.broken(problem, plan));
        for (int row = 0; row < 4; row++) {
            int number = row;
            List<PlatePiece> own = plan.pieces().stream()
                    .filter(p -> p.places().get(0).loop() == number)
                    .sorted(Comparator.comparingDouble(p -> p.places().get(0).from()))
                    .toList();
            if (!own.isEmpty()) {
                PlatePiece last = own.get(own.size() - 1);
                double before = own.get(0).places().get(0).from();
                double after = 1300 - last.places().get(0).from() - last.length();
                assertEquals(before, after, 1.01, "row " + row);
                assertEquals(0, before % 1, 1e-9, "a whole number of mm");
            }
        }
    }

    /** A short row beside a long one starts or ends with it where it is free to. */
    @Test
    void neighboursShareALine() {
        PlatePlan plan = new PlatePacking().pack(problem(SINGLE, 1210, 1610, 1210, 1610));
        for (int row = 0; row < 3; row++) {
            double[] a = ends(plan, row);
            double[] b = ends(plan, row + 1);
            assertTrue(
                    a == null || b == null || Math.min(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])) <= 1,
                    "rows share no line");
        }
    }

    /** From where to where a row has plates, along x; rows run to and fro from x = 100. */
    private static double[] ends(PlatePlan plan, int row) {
        double[] rows = {1210, 1610, 1210, 1610};
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (PlatePiece p : plan.pieces()) {
            if (p.places().get(0).loop() == row) {
                double from = p.places().get(0).from();
                double start = row % 2 == 0 ? from : rows[row] - from - p.length();
                low = Math.min(low, start);
                high = Math.max(high, start + p.length());
            }
        }
        return low < high ? new double[] {low, high} : null;
    }

    /** 5 mm are cut off each plate's end, so 1190 is the longest piece, and 590 + 3 + 590 leave 1200 - 5 - 1183 - 3 = 9. */
    @Test
    void trimIsLost() {
        SpreaderPlate trimmed = new SpreaderPlate(
                "SP-1",
                "single",
                120,
                1,
                0,
                16,
                0.5,
                "aluminium",
                0.4,
                3,
                10,
                List.of(new PlateStock(1200, 310, 620)),
                5);
        PlateProblem problem = problem(trimmed, 1200, 1200, 600, 600);
        PlatePlan plan = new PlatePacking().pack(problem);
        assertEquals(List.of(), Rows.broken(problem, plan));
        for (PlateCut cut : plan.stock()) {
            double used = cut.cuts().stream().mapToDouble(c -> c).sum()
                    + 3 * (cut.cuts().size() - 1);
            assertEquals(1200, cut.length());
            assertTrue(used <= 1195 + 1e-9, "the trim is used: " + cut.cuts());
            assertEquals(Math.max(0, 1195 - used - 3), cut.offcut(), 1e-9);
        }
    }

    /** A remark on twin plates says by how much the best plan with them is worse; it never says that single ones cost no more. */
    @Test
    void unusedTwinPlates() {
        Job.PlateRequest request = new Job.PlateRequest(
                List.of(SINGLE, TWIN), Job.Share.of(0.85), new Job.Gaps(0, 5, 5), Job.Pieces.from(150));
        PlateProblem lone =
                new PlateProblem(Rows.floor(), request, new Shelf(List.of()), Rows.of(900), Optional.of(LABOUR));
        PlatePlan plan = new PlatePacking().pack(lone);
        assertEquals(List.of(new UnusedPlate("SP-2", UnusedPlate.Why.NONE_FOUND, 0)), plan.unused());
    }
}
