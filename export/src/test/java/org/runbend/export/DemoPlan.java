package org.runbend.export;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.bare.Reason;
import org.runbend.optimizer.bare.Remedy;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.UnusedPlate;
import org.runbend.optimizer.tape.TapeMeasuring;

/**
 * A plan made by hand: floor 1500 x 900, spacing 150, radius 75, one loop of 7 runs and 6 bends.
 *
 * <p>Straight 225 + 1200 + 1050 + 1050 + 300 + 1200 + 225 = 5250 mm; 8 quarter bends of 75 pi / 2 = 117.810 mm; on the floor
 * 6192.478 mm; cut (6192.478 + 900 + 1100) x 1.02 = 8356.3, so 8357 mm. Plates 1000 + 800 + 2 x 800 = 3400 mm.
 */
public final class DemoPlan {
    /** An id and texts that spreadsheets, markup and quoting must survive. */
    public static final String NASTY_ID = "=S\"1,2";

    private DemoPlan() {}

    /** The plan. */
    public static KitPlan plan() {
        return new KitPlan(
                job(),
                new TapeMeasuring().measure(job()),
                new KitPlan.LaidPart(
                        75,
                        new KitPlan.LatticePlace(new Point(75, 75), 0, 150, 60),
                        List.of(loop()),
                        95,
                        bare(),
                        List.of()),
                plates(),
                new CoilPlan(
                        List.of(new CoilPlan.CoilCut(
                                "PX", 25000, List.of(new CoilPlan.LoopCut("A", 8357)), 16643, Optional.empty())),
                        2125,
                        2125,
                        "one coil holds it"),
                new KitPlan.Box(
                        List.of(
                                new KitPlan.BoxItem("PX-25", "Pipe 16 x 2, coil of 25 m", 1, "coil", 3900, 2.075),
                                new KitPlan.BoxItem("SP", "Spreader plate 1200", 1, "piece", 990, 0.5),
                                new KitPlan.BoxItem(
                                        "CL",
                                        "Clip with a name so long that it needs a second line",
                                        48,
                                        "piece",
                                        5,
                                        0.002)),
                        5130,
                        2.671),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(
                        PlanCheck.atMost("pipe to cut", 8357, 25000, "mm", PlanCheck.Verdict.FAIL, "longest coil"),
                        PlanCheck.atLeast("coverage", 64.8, 85, "%", PlanCheck.Verdict.WARN, "job")),
                List.of(new Remark.OfJob("Some places stay bare.")));
    }

    private static List<BareFloor> bare() {
        return List.of(new BareFloor(
                Reason.NOT_JOINED,
                3,
                0.0675,
                1,
                new Point(225, 675),
                "at [225, 675] near post",
                " join the port's part of the floor nowhere.",
                List.of(
                        new Remedy(Remedy.Change.CLEARANCE, "post", 40, 25, 0, 0, 3, 4, 0.09),
                        new Remedy(Remedy.Change.PORT, "", 0, 0, 150, 600, 3, 3, 0.0675))));
    }

    /** A run of the loop, by its place among the elements. */
    public static Element element(int index) {
        return plan().loops().get(0).breakdown().elements().get(index);
    }

    private static Job job() {
        Pipe pipe = new Pipe(
                "PX",
                "Pipe 16 x 2",
                16,
                2,
                "pe-rt",
                55,
                80,
                Optional.empty(),
                0.083,
                List.of(new Coil(25000, 2125, 3900)));
        List<SpreaderPlate> plates = List.of(plate("SP", 120, 1, 0), plate("SP2", 270, 2, 150));
        Catalog catalog =
                new Catalog("Kettle & Cope", "EUR", List.of(pipe), plates, List.of(), List.of(), List.of(), List.of());
        return new Job(
                new Job.Heading(
                        "Reading room <caf\u00e9>",
                        "HF-1042",
                        Optional.of("=cmd|x"),
                        Optional.of("12 March"),
                        Optional.empty()),
                new Job.Supply(
                        catalog, new Shelf(List.of(new Remnant(NASTY_ID, "SP", 805), new Remnant("P1", "SP", 90)))),
                floor(),
                new Job.Layout(Job.Grid.free(150, 75), new Job.Aim(PlacePrice.turns(10), Job.Prefer.LONG_RUNS)),
                new Job.PipeRequest(pipe, 900, 1100, 0.02, OptionalDouble.empty()),
                new Job.PlateRequest(plates, Job.Share.of(0.85), new Job.Gaps(100, 5, 5), Job.Pieces.from(150)),
                Optional.empty(),
                Optional.empty(),
                Job.Source.plain("00ff"));
    }

    private static SpreaderPlate plate(String sku, double width, int grooves, double centres) {
        return new SpreaderPlate(
                sku,
                sku,
                width,
                grooves,
                centres,
                16,
                0.5,
                "aluminium",
                0.4,
                3,
                10,
                List.of(new PlateStock(1200, 500, 990)));
    }

    private static Job.FloorPlan floor() {
        return new Job.FloorPlan(
                corners(0, 0, 1500, 0, 1500, 900, 0, 900),
                List.of(
                        new Job.FloorMark("window", new Point(750, 900), 2),
                        new Job.FloorMark("door", new Point(1500, 600), -1)),
                List.of(
                        new KeepOut("drain", KeepOut.Kind.DRAIN, new Shape.Circle(new Point(700, 600), 50), 60),
                        new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(950, 600), 15), 35),
                        new KeepOut(
                                "post",
                                KeepOut.Kind.PILLAR,
                                new Shape.Polygon(corners(350, 560, 450, 560, 450, 640, 350, 640)),
                                40)),
                List.of(new Job.Unheated(
                        "locker", new Shape.Polygon(corners(1100, 500, 1300, 500, 1300, 700, 1100, 700)))),
                new Job.Port(new Point(0, 450), 330));
    }

    private static List<Point> corners(double... xy) {
        return IntStream.range(0, xy.length / 2)
                .mapToObj(i -> new Point(xy[2 * i], xy[2 * i + 1]))
                .toList();
    }

    private static KitPlan.LoopPlan loop() {
        Breakdown b = new Breakdown(List.of(
                        run(75, 375, 75, 150),
                        bend(75, 150, 150, 75, 150, 150, 90),
                        run(150, 75, 1350, 75),
                        bend(1350, 75, 1350, 225, 1350, 150, 180),
                        run(1350, 225, 300, 225),
                        bend(300, 225, 300, 375, 300, 300, -180),
                        run(300, 375, 1350, 375),
                        bend(1350, 375, 1425, 450, 1350, 450, 90),
                        run(1425, 450, 1425, 750),
                        bend(1425, 750, 1350, 825, 1350, 750, 90),
                        run(1350, 825, 150, 825),
                        bend(150, 825, 75, 750, 150, 750, 90),
                        run(75, 750, 75, 525)))
                .with(List.of(
                        new Slot(new Point(75, 375), new Point(75, 312), 20),
                        new Slot(new Point(75, 525), new Point(75, 588), 20)));
        List<Point> bare = List.of(new Point(225, 525), new Point(225, 675), new Point(525, 525));
        return new KitPlan.LoopPlan(
                "A", b, b.floorLength(), 8357, 10, 3, OptionalInt.empty(), 0, 40, OptionalInt.of(38), bare);
    }

    private static Element.Run run(double x1, double y1, double x2, double y2) {
        return new Element.Run(new Point(x1, y1), new Point(x2, y2));
    }

    private static Element.Bend bend(double x1, double y1, double x2, double y2, double cx, double cy, double turn) {
        return new Element.Bend(new Point(x1, y1), new Point(x2, y2), new Point(cx, cy), 75, turn);
    }

    private static PlatePlan plates() {
        return new PlatePlan(
                List.of(
                        new PlatePiece("SP", 1000, List.of(new PlatePiece.Place(0, 2, 100))),
                        new PlatePiece(
                                "SP2", 800, List.of(new PlatePiece.Place(0, 4, 100), new PlatePiece.Place(0, 6, 150))),
                        new PlatePiece("SP", 800, List.of(new PlatePiece.Place(0, 10, 100)))),
                List.of(
                        new PlateCut("SP", 1200, List.of(1000.0), 197, Optional.empty()),
                        new PlateCut("SP", 805, List.of(800.0), 2, Optional.of(NASTY_ID)),
                        new PlateCut("SP2", 1200, List.of(800.0), 397, Optional.empty())),
                3,
                4000,
                3400,
                5250,
                1000,
                900,
                "material",
                1500,
                List.of(new UnusedPlate("SP2", UnusedPlate.Why.WIDER, 0)));
    }
}
