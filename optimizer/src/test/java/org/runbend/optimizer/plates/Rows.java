package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.PlatesVerifier;

/** Floors for plates alone: straight rows 150 mm apart, to and fro, joined by return bends (each row's end counts as clear). */
final class Rows {
    private Rows() {}

    /** Rows of these lengths, each from x = 100 on; every second one runs back. Bends are left out: plates need none. */
    static List<Breakdown> of(double... lengths) {
        List<Breakdown> loops = new ArrayList<>();
        for (int r = 0; r < lengths.length; r++) {
            double y = 100 + 150 * r;
            Point left = new Point(100, y);
            Point right = new Point(100 + lengths[r], y);
            loops.add(new Breakdown(List.of(r % 2 == 0 ? new Element.Run(left, right) : new Element.Run(right, left))));
        }
        return loops;
    }

    static Job.FloorPlan floor() {
        List<Point> outline = List.of(new Point(0, 0), new Point(9000, 0), new Point(9000, 3000), new Point(0, 3000));
        return new Job.FloorPlan(outline, List.of(), List.of(), List.of(), new Job.Port(new Point(0, 100), 330));
    }

    static SpreaderPlate plate(int grooves, double length, long cost, double kerf, double step) {
        return new SpreaderPlate(
                "SP-" + grooves,
                grooves == 1 ? "single" : "twin",
                grooves == 1 ? 120 : 270,
                grooves,
                grooves == 1 ? 0 : 150,
                16,
                0.5,
                "aluminium",
                0.4,
                kerf,
                step,
                List.of(new PlateStock(length, cost, 2 * cost)));
    }

    static PlateProblem problem(Job.PlateRequest request, double... lengths) {
        return new PlateProblem(floor(), request, new Shelf(List.of()), of(lengths));
    }

    /** What the verifier has against a plan. */
    static List<Finding> broken(PlateProblem problem, PlatePlan plan) {
        return new PlatesVerifier(problem.request(), problem.floor().outline(), List.of(), List.of(), problem.shelf())
                .verify(problem.loops(), plan);
    }
}
