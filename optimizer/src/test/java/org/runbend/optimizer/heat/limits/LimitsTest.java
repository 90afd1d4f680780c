package org.runbend.optimizer.heat.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Stack;

class LimitsTest {
    private static final FinProblem FLOOR = FinProblem.even(
            Stack.of(12, 0.13, 0, 30, 0.034), new PipeWall(16, 2, 0.35), new Plate(0.5, 200), 150, 150, Contact.IDEAL);

    /** From memory: 51, 48, 43 degrees C. */
    @ParameterizedTest
    @CsvSource({"0.1, 51", "1, 51", "10, 48", "480, 43", "1000, 43", "3.16228, 49.5"})
    void burns(double minutes, double celsius) {
        assertEquals(celsius, new Iso13732().threshold(minutes), 1e-4);
    }

    /** Two codes agree on 9 K over a room of 20; 29, 35 and 33 stand on a public page. */
    @Test
    void surfaces() {
        assertEquals(29, SurfaceLimit.OCCUPIED.celsius());
        assertEquals(35, SurfaceLimit.EDGE.celsius());
        assertEquals(33, SurfaceLimit.BATH.celsius());
        assertEquals(27, SurfaceLimit.TIMBER.celsius());
    }

    /** A mattress keeps nearly all heat in: at 65 degrees C the floor gets hot enough to burn, at 36 it does not. */
    @Test
    void sleeping() {
        SleepingSolution hot = new SleepingFloor().solve(new SleepingProblem(FLOOR, 65, 20, -10));
        SleepingSolution mild = new SleepingFloor().solve(new SleepingProblem(FLOOR, 36, 20, -10));
        assertTrue(hot.underMattress() > SleepingFloor.FAIL + 5, hot::toString);
        assertTrue(mild.underMattress() < SleepingFloor.WARN, mild::toString);
        double supply = 65 + (SleepingFloor.WARN - hot.underMattress()) / hot.perKelvin();
        assertEquals(
                SleepingFloor.WARN,
                new SleepingFloor()
                        .solve(new SleepingProblem(FLOOR, supply, 20, -10))
                        .underMattress(),
                1e-6);
        // By hand as a chain of resistances for a plate at one temperature: coolant - 0.048 - ply - mattress and air;
        // down 1.39.
        double up = 1 / (1 / 10.8 + 1 + 0.012 / 0.13);
        double down = 0.7178;
        double plane = (65 / 0.048 + up * 20 + down * -10) / (1 / 0.048 + up + down);
        assertEquals(20 + up * (plane - 20) * (1 + 1 / 10.8), hot.underMattress(), 1.5);
    }

    @Test
    void frost() {
        Mixture forty = Mixture.ofVolume(Coolant.Base.PROPYLENE_GLYCOL, 0.4);
        FrostProtection frost = new FrostProtection();
        assertEquals(
                Finding.Verdict.OK, frost.judge(forty, Optional.of(-15.0), -10).verdict());
        assertEquals(
                Finding.Verdict.FAIL,
                frost.judge(forty, Optional.of(-30.0), -10).verdict());
        assertEquals(
                Finding.Verdict.WARN, frost.judge(forty, Optional.empty(), -10).verdict());
        assertEquals(
                Finding.Verdict.FAIL,
                frost.judge(Mixture.water(), Optional.of(-1.0), 5).verdict());
    }

    @Test
    void drinkingWater() {
        DrinkingWater water = new DrinkingWater();
        Mixture ethylene = Mixture.ofVolume(Coolant.Base.ETHYLENE_GLYCOL, 0.4);
        Mixture propylene = Mixture.ofVolume(Coolant.Base.PROPYLENE_GLYCOL, 0.4);
        assertEquals(Finding.Verdict.FAIL, water.judge(ethylene, 1).verdict());
        assertEquals(Finding.Verdict.OK, water.judge(ethylene, 2).verdict());
        assertEquals(Finding.Verdict.OK, water.judge(propylene, 1).verdict());
    }

    @Test
    void theTightestLimitBinds() {
        HighestSupply.Answer a = new HighestSupply()
                .solve(
                        List.of(
                                new SupplyLimit("floor", 33, 0.4, 29),
                                new SupplyLimit("pipe", 60, 1, 70),
                                new SupplyLimit("cold", 20, 0, 10)),
                        60);
        assertEquals(50, a.celsius(), 1e-9);
        assertEquals("floor", a.name());
    }
}
