package org.runbend.optimizer.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.product.Item;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.coils.CoilPlan.CoilCut;
import org.runbend.optimizer.coils.CoilPlan.LoopCut;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.tape.TapeMeasuring;

/**
 * A kit planned by hand: a floor of 600 x 450 mm, 12 nodes at a spacing of 150 mm and an edge of 75 mm, all served.
 *
 * <pre>
 * y 375   +--+  +--+       +--+ and its likes are return bends of 75 mm; the loop begins at (75, 75),
 *     225 *  +--+  |       runs right, and ends at (75, 225)
 *      75 *--------+
 *        75 225 375 525 x
 * </pre>
 *
 * Length: 11 links of 150 mm less 75 (2 - pi/2) = 32.190 mm a quarter bend: 1650 - 7 x 32.190 = 1424.667 mm. Cut:
 * (1424.667 + 900 + 1100) x 1.02 = 3493.16, so 3710 mm.
 */
public final class SoundKit {
    public static final double SPACING = 150;
    public static final List<Point> OUTLINE = points(0, 0, 600, 0, 600, 450, 0, 450);
    public static final Point PORT = new Point(0, 150);
    public static final double REACH = 330;
    public static final KeepOut BOLT =
            new KeepOut("seat bolt", KeepOut.Kind.BOLT, new Shape.Spot(new Point(300, 150), 0), 60);
    public static final KeepOut DRAIN =
            new KeepOut("drain", KeepOut.Kind.DRAIN, new Shape.Circle(new Point(450, 280), 10), 20);
    public static final KeepOut PILLAR = new KeepOut(
            "pillar", KeepOut.Kind.PILLAR, new Shape.Polygon(points(290, 280, 310, 280, 310, 300, 290, 300)), 20);
    public static final List<KeepOut> KEEP_OUTS = List.of(BOLT, DRAIN, PILLAR);
    public static final Job.Unheated LOCKER =
            new Job.Unheated("locker", new Shape.Polygon(points(0, 400, 50, 400, 50, 450, 0, 450)));
    public static final Shelf SHELF = new Shelf(
            List.of(new Remnant("C7", "PX-16", 9000), new Remnant("O3", "SP-1", 460), new Remnant("O4", "SP-1", 110)));
    public static final SpreaderPlate SINGLE = new SpreaderPlate(
            "SP-1", "single", 120, 1, 0, 16, 0.5, "aluminium", 0.4, 3, 10, List.of(new PlateStock(1200, 1500, 2500)));
    public static final SpreaderPlate TWIN = new SpreaderPlate(
            "SP-2", "twin", 270, 2, 150, 16, 0.5, "aluminium", 0.8, 3, 10, List.of(new PlateStock(1200, 2600, 4000)));
    public static final Pipe PIPE = new Pipe(
            "PX-16",
            "pipe",
            16,
            2,
            "pe-rt",
            55,
            80,
            Optional.of("AID"),
            0.1,
            List.of(new Coil(25_000, 2000, 4000), new Coil(50_000, 3500, 7000)));
    public static final Job.PlateRequest WISH = request(0.85);

    private SoundKit() {}

    public static List<Point> points(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new Point(xy[i], xy[i + 1]));
        }
        return points;
    }

    public static Element.Run run(double x0, double y0, double x1, double y1) {
        return new Element.Run(new Point(x0, y0), new Point(x1, y1));
    }

    public static Element.Bend bend(double x0, double y0, double x1, double y1, double cx, double cy, double turn) {
        return new Element.Bend(new Point(x0, y0), new Point(x1, y1), new Point(cx, cy), 75, turn);
    }

    /** The loop of the picture above. */
    public static Breakdown loop() {
        return new Breakdown(List.of(
                run(75, 75, 450, 75),
                bend(450, 75, 525, 150, 450, 150, 90),
                run(525, 150, 525, 300),
                bend(525, 300, 375, 300, 450, 300, 180),
                bend(375, 300, 225, 300, 300, 300, -180),
                bend(225, 300, 75, 300, 150, 300, 180),
                run(75, 300, 75, 225)));
    }

    public static Job.PlateRequest request(double coverage) {
        return new Job.PlateRequest(
                List.of(SINGLE, TWIN), Job.Share.of(coverage), new Job.Gaps(25, 5, 5), Job.Pieces.from(100));
    }

    /**
     * Stretches: element 0 gives 375 - 25 = 350 mm, element 2 gives 150 - 2 x 25 = 100 mm, element 6 gives 75 - 25 = 50,
     * under the least piece. Two pieces from one plate leave 1200 - 450 - 2 x 3 = 744 mm; cut each from a plate of its own
     * they would cost two plates.
     */
    public static PlatePlan plates() {
        return new PlatePlan(
                List.of(piece(350, 0, 0), piece(100, 2, 25)),
                List.of(new PlateCut("SP-1", 1200, List.of(350.0, 100.0), 744, Optional.empty())),
                3,
                450,
                450,
                600,
                1500,
                1500,
                "material",
                3000,
                List.of());
    }

    public static PlatePiece piece(double length, int element, double from) {
        return new PlatePiece("SP-1", length, List.of(new PlatePiece.Place(0, element, from)));
    }

    /** 25000 - 3710 = 21290 mm are left. */
    public static CoilPlan coils() {
        return new CoilPlan(
                List.of(new CoilCut("PX-16", 25_000, List.of(new LoopCut("A", 3710)), 21_290, Optional.empty())),
                2000,
                2000,
                "material");
    }

    public static Catalog catalog() {
        return new Catalog(
                "Demo",
                "EUR",
                List.of(PIPE),
                List.of(SINGLE, TWIN),
                List.of(
                        item("VALVE", 5000, 1.0, Item.Per.KIT, 1, List.of()),
                        item("NIPPLE", 300, 0.1, Item.Per.LOOP, 2, List.of("PX-16")),
                        item("CLAMP", 20, 0.01, Item.Per.BEND, 1, List.of()),
                        item("TAPE", 400, 0.2, Item.Per.METRE_OF_RUN, 0.5, List.of()),
                        item("CLIP", 10, 0.005, Item.Per.METRE_OF_PIPE, 4, List.of()),
                        item("SCREW", 5, 0.001, Item.Per.PLATE_PIECE, 4, List.of()),
                        item("AID", 900, 0.3, Item.Per.ON_DEMAND, 1, List.of()),
                        item("THIN", 100, 0.1, Item.Per.KIT, 1, List.of("PX-10")),
                        item("SLEEVE", 0, 0, Item.Per.PORT, 1, List.of()),
                        item("COLLAR", 0, 0, Item.Per.JOINT, 2, List.of()),
                        item("GUIDE", 0, 0, Item.Per.HAND_ROUTING, 1, List.of()),
                        item("PROBE", 0, 0, Item.Per.SENSOR, 1, List.of())),
                List.of(),
                List.of(),
                List.of());
    }

    private static Item item(String sku, long price, double weight, Item.Per per, double amount, List<String> pipes) {
        return new Item(sku, sku, "piece", price / 2, price, weight, per, amount, pipes, OptionalDouble.empty());
    }

    /** Bends 1 + 3 x 2 = 7, runs 0.6 m x 0.5 -> 1, pipe 1.4247 m x 4 = 5.7 -> 6, pieces 2 x 4 = 8; a hole and a joint at each end. */
    public static List<KitPlan.BoxItem> items() {
        return List.of(
                line("VALVE", 1, 5000, 1.0),
                line("NIPPLE", 2, 300, 0.1),
                line("CLAMP", 7, 20, 0.01),
                line("TAPE", 1, 400, 0.2),
                line("CLIP", 6, 10, 0.005),
                line("SCREW", 8, 5, 0.001),
                line("AID", 1, 900, 0.3),
                line("PX-16/25000", 1, 4000, 2.5),
                line("SP-1", 1, 2500, 0.8),
                line("SLEEVE", 2, 0, 0),
                line("COLLAR", 4, 0, 0),
                line("GUIDE", 1, 0, 0));
    }

    public static KitPlan.BoxItem line(String sku, long quantity, long price, double weight) {
        return new KitPlan.BoxItem(sku, sku, quantity, "piece", price, weight);
    }

    public static Job job(OptionalDouble loopLimit) {
        return new Job(
                new Job.Heading("Test floor", "T-1", Optional.empty(), Optional.empty(), Optional.empty()),
                new Job.Supply(catalog(), SHELF),
                new Job.FloorPlan(OUTLINE, List.of(), KEEP_OUTS, List.of(LOCKER), new Job.Port(PORT, REACH)),
                new Job.Layout(Job.Grid.free(SPACING, 75), new Job.Aim(PlacePrice.turns(10), Job.Prefer.LONG_RUNS)),
                new Job.PipeRequest(PIPE, 900, 1100, 0.02, loopLimit),
                WISH,
                Optional.empty(),
                Optional.empty(),
                Job.Source.plain("00"));
    }

    public static KitPlan.LoopPlan loopPlan() {
        return new KitPlan.LoopPlan(
                "A", loop(), 1424.667, 3710, 8, 0, OptionalInt.of(8), 0, 8, OptionalInt.of(8), List.of());
    }

    /**
     * Total 5000 + 600 + 140 + 400 + 60 + 40 + 900 + 4000 + 2500 = 13640; weight 1 + 0.2 + 0.07 + 0.2 + 0.03 + 0.008 +
     * 0.3 + 2.5 + 0.8 = 5.108 kg.
     */
    public static KitPlan plan() {
        return new KitPlan(
                job(OptionalDouble.empty()),
                new TapeMeasuring().measure(job(OptionalDouble.empty())),
                new KitPlan.LaidPart(
                        75,
                        new KitPlan.LatticePlace(new Point(75, 75), 0, SPACING, 12),
                        List.of(loopPlan()),
                        95,
                        List.of(),
                        List.of()),
                plates(),
                coils(),
                new KitPlan.Box(items(), 13_640, 5.108),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(PlanCheck.atLeast("least bend radius", 75, 55, "mm", PlanCheck.Verdict.FAIL, "catalog")),
                List.of());
    }

    /** A list with one entry replaced. */
    public static <T> List<T> with(List<T> list, int index, T entry) {
        List<T> copy = new ArrayList<>(list);
        copy.set(index, entry);
        return copy;
    }

    /** Asserts that one sentence holds all the words. */
    public static void assertFound(List<?> violations, String... words) {
        assertTrue(
                violations.stream().anyMatch(v -> List.of(words).stream().allMatch(v.toString()::contains)),
                () -> "no sentence with " + List.of(words) + " in " + violations);
    }
}
