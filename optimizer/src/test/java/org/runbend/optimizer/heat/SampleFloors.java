package org.runbend.optimizer.heat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
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

/** Floors for the tests of the whole. */
final class SampleFloors {
    static final PipeWall PIPE = new PipeWall(16, 2, 0.35);
    static final Plate SHEET = new Plate(0.5, 200);
    static final Mixture GLYCOL = Mixture.ofVolume(Coolant.Base.PROPYLENE_GLYCOL, 0.4);
    static final PumpCurve PUMP = new PumpCurve(List.of(
            new PumpCurve.Point(0, 34),
            new PumpCurve.Point(2, 32),
            new PumpCurve.Point(4, 28),
            new PumpCurve.Point(6, 22),
            new PumpCurve.Point(8, 14),
            new PumpCurve.Point(10, 4)));

    private SampleFloors() {}

    static FloorBuild build() {
        return new FloorBuild(Stack.of(12, 0.13, 0, 30, 0.034), PIPE, FloorMass.PLY, Optional.of(70.0), false);
    }

    /** 20 m in plates of 120 mm, 4 m without, twelve return bends of 75 mm, 2 m of tails. */
    static HeatedLoop loop(String name, double plated) {
        Side side = Side.of(120, 150);
        List<Bend> bends = List.of(new Bend(75, 180, 12));
        double round = 12 * bends.get(0).length();
        return new HeatedLoop(
                name,
                List.of(
                        new PipeStrip(FloorZone.Kind.PLATED, plated, Optional.of(SHEET), side, side),
                        PipeStrip.bare(FloorZone.Kind.GROOVE, 4000, 150),
                        PipeStrip.bare(FloorZone.Kind.BEND, round, 150)),
                new LoopPath(12, LoopPath.PLASTIC, plated + 4000 + 2000, bends, 4, LoopPath.NO_VALVE),
                2000);
    }

    static Supply supply(double celsius, FlowRequest flow) {
        return new Supply(GLYCOL, celsius, Optional.empty(), Optional.of(-15.0), flow);
    }

    static Surroundings van() {
        return new Surroundings(20, -10, 10, Optional.of(SpaceLoss.plain(30)), 0.5, false, Sleeping.NO, true);
    }

    static HeatProblem camper(Supply supply) {
        return new HeatProblem(
                build(),
                List.of(loop("loop 1", 20_000)),
                List.of(new BareFloor(FloorZone.Kind.BARE, 0.3, 1.5), new BareFloor(FloorZone.Kind.UNHEATED, 0.5, 0)),
                supply,
                van(),
                CircuitParts.NONE);
    }

    static CircuitParts circuit(HeatSource source) {
        return new CircuitParts(
                Optional.of(source),
                5,
                Optional.of(new Cylinder(10, 150, 10)),
                OptionalInt.of(1),
                0,
                Optional.of(new FloorSensor(33, 2)),
                true,
                250,
                1.5,
                0);
    }
}
