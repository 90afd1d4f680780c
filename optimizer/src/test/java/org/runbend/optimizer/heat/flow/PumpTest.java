package org.runbend.optimizer.heat.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.coolant.Melinder2010;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.quantity.OddInput;

class PumpTest {
    private static final CoolantProperties WATER = new Melinder2010().at(Mixture.water(), 50);
    private static final LoopPath NOTHING = new LoopPath(100, 0, 0, List.of(), 0, LoopPath.NO_VALVE);
    private static final PumpCurve PUMP =
            new PumpCurve(List.of(new PumpCurve.Point(0, 34), new PumpCurve.Point(4, 28), new PumpCurve.Point(10, 4)));

    private static LoopPath loop(double metres) {
        return new LoopPath(12, 0.007, metres * 1000, List.of(new Bend(75, 180, 8)), 4, LoopPath.NO_VALVE);
    }

    @Test
    void meetsTheCurve() {
        PumpSolution s = new OperatingPoint().solve(new PumpProblem(PUMP, NOTHING, List.of(loop(25)), WATER));
        assertEquals(PUMP.head(s.flow()), s.loops().get(0).total() + s.common().total(), 1e-6);
        assertEquals(s.flow(), s.loops().get(0).flow(), 1e-9);
        assertTrue(!s.endOfCurve());
    }

    /** Loops side by side take the same pressure, their flows add up, and a shorter one gets more. */
    @Test
    void loopsShare() {
        PumpSolution s = new OperatingPoint()
                .solve(new PumpProblem(PUMP, loop(3), List.of(loop(20), loop(30), loop(30)), WATER));
        assertEquals(s.loops().get(0).total(), s.loops().get(1).total(), 1e-6);
        assertEquals(s.flow(), s.loops().stream().mapToDouble(LoopLosses::flow).sum(), 1e-6);
        assertEquals(s.loops().get(1).flow(), s.loops().get(2).flow(), 1e-9);
        assertTrue(s.loops().get(0).flow() > s.loops().get(1).flow());
        assertEquals(s.head(), s.loops().get(0).total() + s.common().total(), 1e-6);
    }

    @Test
    void aPumpTooStrongForItsCurveEndsThere() {
        PumpCurve flat = new PumpCurve(List.of(new PumpCurve.Point(0, 50), new PumpCurve.Point(2, 50)));
        PumpSolution s = new OperatingPoint().solve(new PumpProblem(flat, NOTHING, List.of(loop(5)), WATER));
        assertTrue(s.endOfCurve());
        assertEquals(2, s.flow(), 1e-9);
    }

    @Test
    void aPumpWithoutHeadMovesNothing() {
        PumpCurve dead = new PumpCurve(List.of(new PumpCurve.Point(0, 0), new PumpCurve.Point(2, 0)));
        PumpSolution s = new OperatingPoint().solve(new PumpProblem(dead, NOTHING, List.of(loop(5)), WATER));
        assertEquals(0, s.flow(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, 10, 4, 12", "4, 10, 4, 8", "4, 10, 0, 8"})
    void aCurveThatRisesIsOneLine(double q1, double h1, double q2, double h2) {
        String line = assertThrows(
                        OddInput.class,
                        () -> new PumpCurve(List.of(new PumpCurve.Point(q1, h1), new PumpCurve.Point(q2, h2))))
                .getMessage();
        assertEquals("pump curve: along it flow must rise and head must not (point 2)", line);
    }

    /** With the valves set as told, all loops take one pressure at the wanted flows. */
    @Test
    void balances() {
        List<LoopPath> loops = List.of(loop(20), loop(35), loop(28));
        List<Double> wanted = List.of(1.2, 2.0, 1.6);
        BalanceSolution s = new LoopBalance().solve(new BalanceProblem(loops, wanted, WATER));
        for (int i = 0; i < loops.size(); i++) {
            LoopPath p = loops.get(i);
            LoopPath set = new LoopPath(
                    p.bore(),
                    p.roughness(),
                    p.straight(),
                    p.bends(),
                    p.fittings(),
                    s.settings().get(i).kv());
            assertEquals(
                    s.pressure(),
                    new DarcyWeisbach().losses(set, WATER, wanted.get(i)).total(),
                    1e-6);
        }
        assertEquals(1, s.settings().stream().filter(v -> v.throttled() == 0).count());
    }

    /** 10 m of water weigh 98.07 kPa at 1000 kg/m3: a tank 2 m over the hottest point adds 19 kPa of hot water. */
    @Test
    void heightSetsBoiling() {
        Mixture glycol = Mixture.ofVolume(Coolant.Base.ETHYLENE_GLYCOL, 0.4);
        StandingSolution level = new StandingPressure().solve(new StandingProblem(glycol, 10, 80, 0, 2, false));
        StandingSolution high = new StandingPressure().solve(new StandingProblem(glycol, 10, 80, 2, 2, false));
        assertEquals(101.325, level.atHottest(), 1e-9);
        assertEquals(19.9, high.atHottest() - level.atHottest(), 0.2);
        assertTrue(high.margin() > level.margin() + 3);
        assertTrue(new StandingPressure()
                        .solve(new StandingProblem(glycol, 10, 130, 0, 2, false))
                        .margin()
                < 0);
    }

    /** Laminar film of glycol in a bore of 12 mm: 137 to 164 W/(m2 K) for Nu 3.66 to 4.36 and 0.45 W/(m K). */
    @Test
    void film() {
        CoolantProperties glycol = new CoolantProperties(1040, 3600, 0.45, 1.6e-3);
        assertEquals(137, new Gnielinski1976().film(1500, glycol, 12), 1);
        // Textbook example, from memory: Re 10 000, Pr 5 gives Nu of about 68 by Gnielinski.
        CoolantProperties five = new CoolantProperties(1000, 4000, 0.8, 1e-3);
        assertEquals(68, new Gnielinski1976().film(1e4, five, 800), 4);
        double below = new Gnielinski1976().film(2300, glycol, 12);
        assertEquals(below, new Gnielinski1976().film(2301, glycol, 12), below * 0.01);
    }

    @Test
    void flushing() {
        // 0.3 m/s in 12 mm: 113.1 mm2 x 0.3 m/s = 2.04 l/min.
        assertEquals(2.04, new AirCarrying().flushing(12), 0.01);
    }
}
