package org.runbend.optimizer.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.output.FloorOutput;
import org.runbend.optimizer.heat.output.FloorZone;

/** The whole against a reckoning by hand and against its own balances. */
class HeatReckoningTest {
    private static HeatSolution solve(HeatProblem problem) {
        return new HeatReckoning().solve(problem);
    }

    /** What the coolant loses is what the loops give, and its drop is that over what it carries. */
    @Test
    void heatFollowsFromTheDrop() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))));
        LoopHeat loop = s.loops().get(0);
        // 40 % propylene glycol by volume near 43 degrees C by ASHRAE: 1023.6 kg/m3 and 3778 J/(kg K): 128.9 W/K at 2
        // l/min.
        double carried = 2 * 1023.6 * 3778 / 60_000;
        assertEquals(loop.upward() + loop.downward(), carried * (loop.supply() - loop.back()), 0.02 * loop.upward());
        assertEquals(s.flow().back(), loop.back(), 1e-9);
    }

    /** By a pocket calculator, from conductances of finite elements: 3.0 m2 in plates of 120 mm, 0.6 without, 0.42 of bends. */
    @Test
    void camperByHand() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))));
        double coolant = s.loops().get(0).mean();
        // Finite elements 3.931 and 0.173; 7 % less for 0.1 mm of air; film of about 140 W/(m2 K) less again:
        // 1 / 4.524 + 0.15 x 0.105 + 1.2 x 0.15 / (140 x 3.1416 x 0.012) = 0.2210 + 0.0157 + 0.0341 m2 K/W, so 0.816 of
        // it.
        double plated = 3.0 * (3.931 * 0.816 * (coolant - 20) - 0.21 * 30);
        double without = (0.6 + 0.4241) * (1.127 * 0.98 * (coolant - 20) - 0.43 * 30);
        assertEquals(plated + without, s.loops().get(0).upward(), 0.06 * (plated + without));
        assertTrue(s.output().upwardLeast() < s.output().upward()
                && s.output().upward() < s.output().upwardMost());
        assertEquals(3.0 + 0.6 + 0.4241 + 0.8, s.output().area(), 1e-3);
    }

    @Test
    void zonesAddUp() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))));
        double sum = s.output().zones().stream()
                .mapToDouble(z -> z.upward() * z.zone().area())
                .sum();
        assertEquals(sum, s.output().upward(), 1e-9);
        FloorOutput.ZoneOutput unheated = s.output().zones().stream()
                .filter(z -> z.zone().kind() == FloorZone.Kind.UNHEATED)
                .findFirst()
                .orElseThrow();
        assertTrue(unheated.surfaceMean() < 20);
        // The share of the need: 30 W/K and 30 K.
        assertEquals(900, s.need().orElseThrow().need(), 1e-9);
        assertEquals(Math.min(1, s.usedUpward() / 900), s.need().orElseThrow().share(), 1e-9);
    }

    @Test
    void aPumpMeetsItsLoop() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByPump(SampleFloors.PUMP))));
        assertEquals(s.flow().pumpHead(), s.flow().pressureDrop(), 0.01);
        assertEquals(SampleFloors.PUMP.head(s.flow().volume()), s.flow().pumpHead(), 1e-6);
    }

    @Test
    void aSpreadIsKept() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.BySpread(5))));
        assertEquals(40, s.flow().back(), 0.4);
        assertTrue(s.assumptions().stream().anyMatch(a -> a.contains("drops by 5 K")), s.assumptions()::toString);
    }

    /** At the highest supply each limit holds, and a degree more breaks one. */
    @Test
    void highestSupplyKeepsEveryLimit() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))));
        double highest = s.highestSupply().celsius();
        assertTrue(highest > 30 && highest < 60, () -> "highest " + highest);
        assertEquals(Math.rint(10 * highest) / 10, highest, 1e-9, "told as it is: in tenths");
        assertTrue(peak(highest) <= 29 && peak(highest + 0.1) > 29);
        assertTrue(peak(highest + 1) > 29.2);
    }

    /** A supply too hot is told beside what the floor gives at the highest whole degree; warm-up goes no higher; else there is nothing to tell. */
    @Test
    void tooHotASupplyIsHeldDown() {
        HeatSolution hot = solve(SampleFloors.camper(SampleFloors.supply(60, new FlowRequest.ByVolume(2))));
        HeatSolution.Held held = hot.held().orElseThrow();
        assertEquals(Math.floor(hot.highestSupply().celsius()), held.supply(), 1e-9);
        HeatSolution there =
                solve(SampleFloors.camper(SampleFloors.supply(held.supply(), new FlowRequest.ByVolume(2))));
        assertEquals(there.output().upward(), held.upward(), 1e-9);
        assertEquals(there.output().upwardMost(), held.upwardMost(), 1e-9);
        assertEquals(there.output().surfacePeak(), held.surfacePeak(), 1e-9);
        assertEquals(there.need(), hot.need(), "what air heating must give is not that of a floor too hot");
        assertTrue(held.surfacePeak() <= 29 && held.upward() < hot.output().upward());
        assertEquals(
                held.supply(),
                hot.warmUp().points().stream()
                        .mapToDouble(p -> p.coolant())
                        .max()
                        .orElseThrow(),
                1e-9);
        assertEquals(Optional.empty(), there.held());
        assertEquals(there.output().upward(), there.usedUpward());
    }

    private static double peak(double supply) {
        return solve(SampleFloors.camper(SampleFloors.supply(supply, new FlowRequest.ByVolume(2))))
                .output()
                .surfacePeak();
    }

    @Test
    void sleepersAndFrostFail() {
        Supply hot =
                new Supply(Mixture.water(), 40, Optional.of(75.0), Optional.of(-10.0), new FlowRequest.ByVolume(2));
        HeatProblem plain = SampleFloors.camper(hot);
        Surroundings bed =
                new Surroundings(20, -10, 10, Optional.of(SpaceLoss.plain(30)), 0.5, false, Sleeping.YES, true);
        HeatSolution s = solve(new HeatProblem(
                plain.build(),
                plain.loops(),
                plain.bare(),
                hot,
                bed,
                SampleFloors.circuit(new HeatSource.Heater(1000, 4000, 75, 8))));
        assertEquals(Finding.Verdict.FAIL, finding(s, "under a mattress").verdict());
        assertEquals(Finding.Verdict.FAIL, finding(s, "freezing point").verdict());
        assertEquals(
                Finding.Verdict.FAIL,
                finding(s, "highest supply at most what the pipe").verdict());
        assertEquals(Finding.Verdict.WARN, finding(s, "bare tails").verdict());
        assertEquals(
                Finding.Verdict.WARN,
                finding(s, "supply to the floor at most what keeps").verdict());
        assertEquals("sleeper on the floor", s.highestSupply().name());
        assertTrue(s.notes().stream().anyMatch(n -> n.startsWith("A mixing valve")));
        assertTrue(s.notes().contains("A floor sensor with an on/off valve is control, not a safety limit."));
        assertTrue(s.circuit().isPresent());
    }

    /** Where nobody said whether somebody sleeps there, it is told, warned of and bounds nothing; with no sleeper it is not told. */
    @Test
    void whoSleepsIsAskedFor() {
        Supply hot =
                new Supply(SampleFloors.GLYCOL, 40, Optional.of(75.0), Optional.of(-15.0), new FlowRequest.ByVolume(2));
        HeatSolution unsaid = solve(sleeping(hot, Sleeping.UNSAID));
        assertEquals(Finding.Verdict.WARN, finding(unsaid, "under a mattress").verdict());
        assertTrue(finding(unsaid, "under a mattress").value() > 43);
        HeatSolution none = solve(sleeping(hot, Sleeping.NO));
        assertTrue(none.findings().stream().noneMatch(f -> f.name().contains("mattress")));
        assertEquals(none.highestSupply(), unsaid.highestSupply());
        assertTrue(solve(sleeping(hot, Sleeping.YES)).highestSupply().celsius()
                < none.highestSupply().celsius());
    }

    private static HeatProblem sleeping(Supply supply, Sleeping sleeping) {
        HeatProblem p = SampleFloors.camper(supply);
        Surroundings s = p.surroundings();
        return new HeatProblem(
                p.build(),
                p.loops(),
                p.bare(),
                supply,
                new Surroundings(
                        s.room(), s.outside(), s.start(), s.space(), s.humidity(), s.bath(), sleeping, s.metalUnder()),
                p.circuit());
    }

    /**
     * By hand: Uu = 1 / (1/10.8 + 0.012/0.13) = 5.4054, so the top has half (0.5005) of the plates' excess. Peak over mean by finite
     * elements 1.165: 20 + 9 / 1.165 / 0.5005 = 35.4 at the plates, half of 2.5 K less for the setting.
     */
    @Test
    void sensorByHand() {
        HeatSolution.Sensor sensor = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))))
                .sensor()
                .orElseThrow();
        assertEquals(34.2, sensor.highest(), 0.2);
        assertEquals(20 + 0.5005 * (sensor.highest() - 20), sensor.top(), 0.01);
    }

    /** A sensor under the coolant's reach, mixed to 40 degrees C; stuck open and unmixed the floor runs hot. */
    @Test
    void aValveStuckOpenIsTold() {
        Supply mixed =
                new Supply(SampleFloors.GLYCOL, 40, Optional.of(65.0), Optional.of(-15.0), new FlowRequest.ByVolume(3));
        HeatProblem p = SampleFloors.camper(mixed);
        HeatSolution s = solve(new HeatProblem(
                p.build(),
                p.loops(),
                p.bare(),
                mixed,
                p.surroundings(),
                SampleFloors.circuit(new HeatSource.Heater(500, 4000, 65, 8))));
        assertTrue(s.circuit().orElseThrow().hottestSurface()
                < s.stuck().orElseThrow().hottestSurface() - 5);
        assertEquals(61, s.warmUp().points().size());
        assertEquals(
                s.circuit().orElseThrow().points().get(30).surface(),
                s.warmUp().points().get(30).surface());
    }

    @Test
    void poisonBesideDrinkingWaterFails() {
        Supply supply = new Supply(
                Mixture.ofVolume(Coolant.Base.ETHYLENE_GLYCOL, 0.4),
                45,
                Optional.of(45.0),
                Optional.of(-20.0),
                new FlowRequest.ByVolume(2));
        HeatProblem plain = SampleFloors.camper(supply);
        HeatSolution s = solve(new HeatProblem(
                plain.build(),
                plain.loops(),
                plain.bare(),
                supply,
                SampleFloors.van(),
                SampleFloors.circuit(new HeatSource.EngineExchanger(100, 90))));
        assertEquals(Finding.Verdict.FAIL, finding(s, "walls between").verdict());
    }

    @Test
    void severalLoopsAreBalanced() {
        HeatProblem one = SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByPump(SampleFloors.PUMP)));
        HeatSolution s = solve(new HeatProblem(
                one.build(),
                List.of(SampleFloors.loop("loop 1", 12_000), SampleFloors.loop("loop 2", 24_000)),
                List.of(),
                one.supply(),
                one.surroundings(),
                one.circuit()));
        assertEquals(2, s.loops().size());
        assertTrue(s.loops().get(0).losses().flow() > s.loops().get(1).losses().flow());
        assertTrue(s.balance().orElseThrow().settings().get(0).throttled() > 0);
        assertEquals(0, s.balance().orElseThrow().settings().get(1).throttled());
        assertEquals(2 * 0.1131 * (5.6549 + 4) + 0.1131 * 36, s.filling().loop(), 0.05 + 0.1131 * 6);
    }

    /** Filling by hand: 113.1 mm2 x (20 + 4 + 5.65... no: twelve half circles of 75 mm are 2.827 m) and 2 m of tails. */
    @Test
    void fillingByHand() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(2))));
        assertEquals(0.11310 * (20 + 4 + 2.8274), s.filling().loop(), 1e-3);
        assertEquals(0.11310 * 2, s.filling().tails(), 1e-4);
        assertEquals(0.4 * s.filling().litres(), s.filling().glycol(), 1e-9);
        assertTrue(s.expansion().litres() > 0
                && s.expansion().litres() < 0.05 * s.filling().litres());
    }

    @Test
    void noFlowGivesNothing() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(45, new FlowRequest.ByVolume(0))));
        assertTrue(s.output().upward() < 0);
        assertEquals(0, s.loops().get(0).upward() + s.loops().get(0).downward(), 1e-6);
        assertEquals(Finding.Verdict.WARN, finding(s, "velocity").verdict());
        assertTrue(s.notes().stream().anyMatch(n -> n.startsWith("No coolant flows")));
    }

    @Test
    void boilingSupplyIsWarnedOf() {
        HeatSolution s = solve(SampleFloors.camper(SampleFloors.supply(115, new FlowRequest.ByVolume(2))));
        assertEquals(Finding.Verdict.WARN, finding(s, "margin to boiling").verdict());
    }

    @Test
    void withoutColdestItWarns() {
        Supply supply =
                new Supply(SampleFloors.GLYCOL, 45, Optional.empty(), Optional.empty(), new FlowRequest.ByVolume(2));
        assertEquals(
                Finding.Verdict.WARN,
                finding(solve(SampleFloors.camper(supply)), "freezing point").verdict());
    }

    private static Finding finding(HeatSolution s, String name) {
        return s.findings().stream()
                .filter(f -> f.name().startsWith(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " in " + s.findings()));
    }
}
