package org.runbend.optimizer.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.circuit.Cylinder;
import org.runbend.optimizer.heat.circuit.FloorMass;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.flow.Bend;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Side;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.quantity.OddInput;

/** Good, odd and absurd floors from their numbers alone: each gives figures or one clear line, never what is no number. */
class OddHeatTest {
    private static final int CASES = 1500;

    @Test
    void figuresOrOneLine() {
        int solved = 0;
        for (int i = 0; i < CASES; i++) {
            int number = i;
            try {
                HeatSolution s = new HeatReckoning().solve(new Maker(new SplittableRandom(4000 + i)).problem());
                Figures.of(s)
                        .forEach((name, value) -> assertTrue(
                                Double.isFinite(value), () -> "case " + number + ": " + name + " is " + value));
                solved++;
            } catch (OddInput e) {
                assertEquals(1, e.getMessage().lines().count(), e::getMessage);
                assertTrue(!e.getMessage().contains("NaN") || e.getMessage().contains("must be"), e::getMessage);
            }
        }
        int count = solved;
        assertTrue(count > CASES / 4 && count < CASES, () -> count + " of " + CASES + " were solved");
    }

    /** A warmer supply never gives less, a better insulated floor never loses more, a thicker cover never gives more. */
    @Test
    void moreIsMore() {
        for (int i = 0; i < 100; i++) {
            SplittableRandom r = new SplittableRandom(77 + i);
            double celsius = 30 + 40 * r.nextDouble();
            double foam = 10 + 40 * r.nextDouble();
            double cover = 6 + 12 * r.nextDouble();
            HeatSolution base = solve(celsius, foam, cover);
            assertTrue(solve(celsius + 5, foam, cover).output().upward()
                    > base.output().upward());
            assertTrue(solve(celsius, foam + 10, cover).output().downward()
                    < base.output().downward());
            assertTrue(solve(celsius, foam, cover + 6).output().upward()
                    < base.output().upward());
        }
    }

    private static HeatSolution solve(double celsius, double foam, double cover) {
        HeatProblem p = SampleFloors.camper(SampleFloors.supply(celsius, new FlowRequest.ByVolume(3)));
        FloorBuild build = new FloorBuild(
                Stack.of(cover, 0.13, 0, foam, 0.034), SampleFloors.PIPE, FloorMass.PLY, Optional.empty(), false);
        return new HeatReckoning()
                .solve(new HeatProblem(build, p.loops(), p.bare(), p.supply(), p.surroundings(), p.circuit()));
    }

    private static final class Maker {
        private final SplittableRandom r;

        Maker(SplittableRandom r) {
            this.r = r;
        }

        /** A number of a range, or now and then one of the odd ones. */
        private double some(double least, double most, double... odd) {
            if (odd.length > 0 && r.nextInt(12) == 0) {
                return odd[r.nextInt(odd.length)];
            }
            return least + (most - least) * r.nextDouble();
        }

        private boolean maybe() {
            return r.nextBoolean();
        }

        HeatProblem problem() {
            PipeWall pipe = new PipeWall(some(8, 25), some(1, 3), some(0.2, 0.5));
            Stack stack = new Stack(
                    some(4, 25, 0, 200),
                    some(0.08, 0.3, 500),
                    some(0, 0.15, 0, 5),
                    some(6, 12),
                    some(5, 80, 0, 1000),
                    some(0.02, 0.05, 0.005, 500),
                    some(0, 0.2, 0));
            FloorBuild build = new FloorBuild(
                    stack, pipe, FloorMass.PLY, maybe() ? Optional.of(some(40, 95)) : Optional.empty(), maybe());
            int loops = 1 + r.nextInt(3);
            List<HeatedLoop> list = java.util.stream.IntStream.range(0, loops)
                    .mapToObj(i -> loop("loop " + (i + 1), pipe))
                    .toList();
            return new HeatProblem(build, list, bare(), supply(), surroundings(), circuit());
        }

        private HeatedLoop loop(String name, PipeWall pipe) {
            double spacing = some(80, 300, pipe.outer(), 2000);
            double width = some(40, 350, pipe.outer() / 2, 5000);
            Side side = Side.of(width, spacing);
            double plated = some(500, 40_000, 0, 1e6);
            double groove = some(0, 5000, 0);
            Bend bend = new Bend(some(20, 150, 1, 1e5), some(60, 220, 360), r.nextInt(30));
            Plate sheet = new Plate(some(0.2, 1, 0.01, 10), some(50, 240, 0.1));
            return new HeatedLoop(
                    name,
                    List.of(
                            new PipeStrip(FloorZone.Kind.PLATED, plated, Optional.of(sheet), side, side),
                            PipeStrip.bare(FloorZone.Kind.GROOVE, groove, spacing),
                            PipeStrip.bare(FloorZone.Kind.BEND, Math.min(1e7, bend.count() * bend.length()), spacing)),
                    new LoopPath(
                            pipe.bore(),
                            some(0, 0.05, 0),
                            plated + groove + 2000,
                            List.of(bend),
                            some(0, 30, 1e4),
                            maybe() ? LoopPath.NO_VALVE : some(0.1, 3, 1e-6)),
                    2000);
        }

        private List<BareFloor> bare() {
            return List.of(
                    new BareFloor(FloorZone.Kind.BARE, some(0, 3, 0, 1e-9), some(0, 8, 0)),
                    new BareFloor(FloorZone.Kind.UNHEATED, some(0, 3, 0), some(0, 8, 1e4)));
        }

        private Supply supply() {
            Coolant.Base base = List.of(Coolant.Base.WATER, Coolant.Base.ETHYLENE_GLYCOL, Coolant.Base.PROPYLENE_GLYCOL)
                    .get(r.nextInt(3));
            Mixture mixture = Mixture.ofVolume(base, some(0, 0.55, 0, 1, 0.9));
            return new Supply(
                    mixture,
                    some(25, 75, -50, 20, 105, 140, Double.NaN),
                    maybe() ? Optional.of(some(40, 100, 150)) : Optional.empty(),
                    maybe() ? Optional.of(some(-35, 5, -80, 60)) : Optional.empty(),
                    flow());
        }

        private FlowRequest flow() {
            return switch (r.nextInt(3)) {
                case 0 -> new FlowRequest.ByVolume(some(0.2, 10, 0, 1e-9, 1000, -1));
                case 1 -> new FlowRequest.BySpread(some(1, 15, 0.1, 60));
                default ->
                    new FlowRequest.ByPump(new PumpCurve(List.of(
                            new PumpCurve.Point(some(0, 1, 0), some(10, 60, 0)),
                            new PumpCurve.Point(some(2, 12), some(0, 40, 0)))));
            };
        }

        private Surroundings surroundings() {
            return new Surroundings(
                    some(10, 25, -20, 40),
                    some(-25, 15, 35, -60),
                    some(-5, 20, 40),
                    maybe() ? Optional.of(SpaceLoss.plain(some(5, 200, 0))) : Optional.empty(),
                    some(0.3, 0.8, 1),
                    maybe(),
                    List.of(Sleeping.YES, Sleeping.NO, Sleeping.UNSAID).get(r.nextInt(3)),
                    maybe());
        }

        private CircuitParts circuit() {
            HeatSource source =
                    switch (r.nextInt(3)) {
                        case 0 ->
                            new HeatSource.Heater(
                                    some(0, 2000, 0), some(2000, 8000), some(45, 85, 0, 150), some(2, 20, 60));
                        case 1 -> new HeatSource.EngineExchanger(some(10, 500, 1e5), some(60, 105, -30, 130));
                        default -> new HeatSource.MainsElement(some(1000, 2000, 1e5), some(40, 80, 0, 95));
                    };
            boolean closed = maybe();
            return new CircuitParts(
                    // eight hours of a circuit take their time; one case in ten has one
                    r.nextInt(10) == 0 ? Optional.of(source) : Optional.empty(),
                    some(0, 20, 0, 1e4),
                    maybe()
                            ? Optional.of(new Cylinder(some(2, 50, 0.1), some(20, 400, 1e5), some(5, 60)))
                            : Optional.empty(),
                    maybe() ? OptionalInt.of(1 + r.nextInt(2)) : OptionalInt.empty(),
                    some(0, 3000, 0),
                    maybe() ? Optional.of(new FloorSensor(some(25, 40, 5, 60), some(0.5, 5))) : Optional.empty(),
                    closed,
                    closed ? some(150, 300, 60, 1000) : 0,
                    some(0, 3, 0, 30),
                    some(-0.5, 3, -5, 30));
        }
    }
}
