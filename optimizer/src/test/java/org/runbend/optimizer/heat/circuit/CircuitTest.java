package org.runbend.optimizer.heat.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.output.Stack;

class CircuitTest {
    private static final Stack PLY = Stack.of(12, 0.13, 0, 30, 0.034);
    private static final FloorMass MASS =
            new FloorMass(PLY, 16, 0.05, 0.5e-3 * FloorMass.ALUMINIUM, FloorMass.PLY, FloorMass.FOAM);
    private static final Mixture GLYCOL = Mixture.ofVolume(Coolant.Base.PROPYLENE_GLYCOL, 0.4);
    private static final HeatSource HEATER = new HeatSource.Heater(1000, 4000, 65, 8);

    private static CircuitProblem problem(HeatSource source, boolean sensor, boolean stuck, int minutes) {
        return new CircuitProblem(
                MASS,
                4,
                GLYCOL,
                8,
                4,
                Double.POSITIVE_INFINITY,
                source,
                Optional.of(new Cylinder(10, 150, 15)),
                0,
                sensor ? Optional.of(new FloorSensor(34, 2)) : Optional.empty(),
                stuck,
                12,
                20,
                0,
                minutes);
    }

    /** The valve holds the sensor's mean near its setting, within hysteresis and what overshoots. */
    @Test
    void sensorHoldsTheFloor() {
        CircuitRun run = new CircuitSimulation().solve(problem(HEATER, true, false, 600));
        double sensor = run.points().subList(401, 601).stream()
                .mapToDouble(CircuitRun.Point::sensor)
                .average()
                .orElseThrow();
        assertEquals(34, sensor, 2.5);
        assertTrue(run.duty() > 0.1 && run.duty() < 0.9, () -> "duty " + run.duty());
        // The plates hold little heat, so the valve works often and the surface hardly swings.
        assertTrue(run.openings() > 10, () -> "openings " + run.openings());
        assertTrue(run.swing() > 0 && run.swing() < 1, () -> "swing " + run.swing());
        // What the floor gives in the mean follows from its mean plate temperature.
        double steady = 4 * (PLY.up() * (sensor - 20) + PLY.down(16) * sensor);
        assertEquals(steady, run.floor(), 0.1 * steady);
        // The cylinder is hot then, so all heat goes to the floor.
        assertTrue(run.floorShare() > 0.8);
    }

    /** Without a sensor, or with the valve stuck, the floor goes where the source brings it. */
    @Test
    void stuckOpenRunsHot() {
        CircuitRun held = new CircuitSimulation().solve(problem(HEATER, true, false, 300));
        CircuitRun stuck = new CircuitSimulation().solve(problem(HEATER, true, true, 300));
        CircuitRun none = new CircuitSimulation().solve(problem(HEATER, false, false, 300));
        assertTrue(stuck.surface() > held.surface() + 4);
        assertEquals(none.surface(), stuck.surface(), 1e-9);
        assertEquals(1, stuck.duty(), 1e-9);
    }

    /** A floor that needs less than the heater's least power makes it start and stop. */
    @Test
    void strongHeaterCycles() {
        CircuitRun run =
                new CircuitSimulation().solve(problem(new HeatSource.Heater(1500, 5000, 65, 8), true, false, 600));
        assertTrue(run.starts() > 2, () -> "starts " + run.starts());
        CircuitRun gentle =
                new CircuitSimulation().solve(problem(new HeatSource.Heater(0, 5000, 65, 8), true, true, 600));
        assertEquals(0, gentle.starts());
        assertEquals(65, gentle.points().get(600).coolant(), 1);
    }

    /** Coolant colder than the floor goes to the cylinder, never through the floor. */
    @Test
    void coldCoolantStaysAway() {
        CircuitProblem cold = new CircuitProblem(
                MASS,
                4,
                GLYCOL,
                8,
                4,
                Double.POSITIVE_INFINITY,
                new HeatSource.EngineExchanger(50, 5),
                Optional.of(new Cylinder(10, 150, 5)),
                0,
                Optional.of(new FloorSensor(34, 2)),
                false,
                25,
                20,
                20,
                60);
        CircuitRun run = new CircuitSimulation().solve(cold);
        assertTrue(run.points().get(60).coolant() < 20);
        assertTrue(run.points().subList(5, 61).stream().noneMatch(CircuitRun.Point::toFloor));
        assertTrue(run.floor() >= -1e-9);
    }

    /** A limiter of the exchanger holds the coolant to its temperature; without one it comes near that of the engine. */
    @Test
    void aLimiterHoldsTheExchanger() {
        HeatSource engine = new HeatSource.EngineExchanger(300, 90);
        CircuitRun free = new CircuitSimulation().solve(problem(engine, false, false, 300));
        CircuitRun held = new CircuitSimulation().solve(problem(engine.heldTo(65), false, false, 300));
        assertTrue(
                free.points().get(300).coolant() > 70,
                () -> "free " + free.points().get(300).coolant());
        assertEquals(65, held.points().get(300).coolant(), 0.5);
        assertTrue(held.points().stream().allMatch(p -> p.coolant() < 65.5));
        assertEquals(65, engine.heldTo(65).highest());
    }

    /** Energy: what the source gave went to coolant, cylinder and floor. */
    @Test
    void mainsElementWarmsWaterAlone() {
        CircuitRun run =
                new CircuitSimulation().solve(problem(new HeatSource.MainsElement(1000, 60), true, false, 120));
        // 10 l from 15 to 60 degrees C take 1.884 MJ, 31.4 minutes at 1 kW.
        assertTrue(run.points().get(33).cylinder() > 55 && run.points().get(20).cylinder() < 60);
        assertTrue(run.points().get(120).surface() < 20);
        assertTrue(!new HeatSource.MainsElement(1000, 60).reachesFloor());
    }

    /** A mixing valve keeps the plates under what it lets through; stuck open, nothing is mixed. */
    @Test
    void mixedCoolantStaysUnderItsSetting() {
        CircuitRun mixed = new CircuitSimulation().solve(mixed(false));
        CircuitRun stuck = new CircuitSimulation().solve(mixed(true));
        assertTrue(mixed.hottestPlates() < 40, () -> "plates " + mixed.hottestPlates());
        // Steady: 65 degrees C over 0.05 m2 K/W and what the flow loses against Uu and Ud of the floor.
        assertTrue(stuck.hottestPlates() > 50, () -> "plates " + stuck.hottestPlates());
        assertEquals(65, mixed.points().get(300).coolant(), 3);
        assertEquals(0, mixed.firstOpen().orElseThrow());
    }

    private static CircuitProblem mixed(boolean stuck) {
        return new CircuitProblem(
                MASS,
                4,
                GLYCOL,
                8,
                4,
                40,
                new HeatSource.Heater(0, 4000, 65, 8),
                Optional.empty(),
                500,
                Optional.empty(),
                stuck,
                12,
                20,
                0,
                300);
    }

    /** In the long run what the source gives goes into floor, cylinder and blowers; the coolant's own store is small. */
    @Test
    void sourceIsBalanced() {
        CircuitRun run = new CircuitSimulation().solve(mixed(false));
        assertEquals(500, run.blowers(), 1e-6);
        assertEquals(0, run.cylinder(), 1e-9);
        assertEquals(run.source(), run.floor() + run.cylinder() + run.blowers(), 0.01 * run.source());
        double steady = 4 * (PLY.up() * (run.plates() - 20) + PLY.down(16) * run.plates());
        assertEquals(steady, run.floor(), 0.03 * steady);
    }

    @Test
    void noFlowNoHeat() {
        CircuitProblem still = new CircuitProblem(
                MASS, 4, GLYCOL, 8, 0, 60, HEATER, Optional.empty(), 0, Optional.empty(), false, 12, 20, 0, 60);
        assertEquals(0, new CircuitSimulation().solve(still).floor(), 1e-9);
    }
}
