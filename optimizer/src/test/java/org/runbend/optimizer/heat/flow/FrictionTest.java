package org.runbend.optimizer.heat.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.coolant.Melinder2010;
import org.runbend.optimizer.heat.coolant.Mixture;

class FrictionTest {
    /** By the library fluids 1.3.1. */
    @ParameterizedTest
    @CsvSource({
        "100, 0, .640000", "1000, 0, .064000", "2000, 0, .032043", "2300, 5e-4, .030844", "3000, 5e-4, .043340",
        "4000, 0, .040590", "4000, 5e-4, .041164", "1e4, 0, .031002", "1e4, 0.01, .044044", "3e4, 5.83e-4, .025071",
        "1e5, 0, .017875", "1e5, 1e-4, .018463", "1e5, 0.01, .038734", "1e6, 1e-3, .020022", "1e7, 1e-5, .009059",
        "1e4, 5e-4, .031865"
    })
    void churchill(double reynolds, double roughness, double friction) {
        near(friction, new Churchill1977().friction(reynolds, roughness), 1e-3);
    }

    /** Colebrook's equation, the other law of turbulent friction, lies within 3 % of Churchill over Re 4000. */
    @ParameterizedTest
    @CsvSource({
        "4000, 0, .039907", "4000, 5e-4, .040412", "1e4, 0, .030883", "1e4, 0.01, .043127", "1e4, 5e-4, .031644",
        "3e4, 5.83e-4, .024987", "1e5, 0, .017990", "1e5, 1e-4, .018514", "1e5, 0.01, .038504", "1e6, 1e-3, .019943",
        "1e7, 1e-5, .008996"
    })
    void churchillBesideColebrook(double reynolds, double roughness, double friction) {
        near(friction, new Churchill1977().friction(reynolds, roughness), 0.022);
    }

    /** Laminar and creeping flow: 64/Re (Hagen and Poiseuille). */
    @ParameterizedTest
    @CsvSource({"1e-3", "1", "9.99", "10.01", "500"})
    void laminar(double reynolds) {
        near(64 / reynolds, new Churchill1977().friction(reynolds, 5e-4), 1e-4);
    }

    /** Loss coefficients of bends by hand and by fluids 1.3.1, four figures. */
    @ParameterizedTest
    @CsvSource({
        "4.6875, .02, .2612, .4431, .1140, .1485", "4.6875, .03, .3565, .6146, .1356, .1728",
        "4.6875, .04, .4517, .7861, .1572, .1971", "6.25, .02, .3062, .5409, .1099, .1482",
        "6.25, .03, .4240, .7613, .1295, .1723", "6.25, .04, .5418, .9817, .1491, .1963",
        "9.375, .02, .4015, .7371, .1070, .1480", "9.375, .03, .5669, 1.0556, .1251, .1721",
        "9.375, .04, .7323, 1.3742, .1432, .1961"
    })
    void rennels(double ratio, double friction, double quarter, double half, double excess90, double excess180) {
        Rennels2012 method = new Rennels2012();
        assertEquals(quarter, method.loss(friction, Math.PI / 2, ratio), 6e-5);
        assertEquals(half, method.loss(friction, Math.PI, ratio), 6e-5);
        assertEquals(excess90, quarter - friction * Math.PI / 2 * ratio, 2e-4);
        assertEquals(excess180, half - friction * Math.PI * ratio, 2e-4);
    }

    /** White's laminar bend of 12 mm bore on 75 mm; Ito by fluids gives 2.787 for Re 1000. */
    @ParameterizedTest
    @CsvSource({"500, .21999, 4.319", "1000, .14137, 2.776", "2000, .09250, 1.816", "4000, .06127, 1.203"})
    void white(double reynolds, double friction, double half) {
        double f = new White1929().friction(reynolds, 12, 75);
        near(friction, f, 1e-4);
        near(half, f * Math.PI * 75 / 12, 3e-4);
    }

    @Test
    void schmidt() {
        assertEquals(8648, new Schmidt1967().critical(12, 75), 1);
    }

    /** Straight pipe, roughness 7 micrometres, Churchill: own reckoning beside fluids 1.3.1 (four figures are printed). */
    @ParameterizedTest
    @CsvSource({
        "ETHYLENE_GLYCOL, .4, 50, 2, 12, 20, 2791, .04138, 3102",
        "ETHYLENE_GLYCOL, .4, 50, 4, 12, 20, 5581, .03742, 11220",
        "ETHYLENE_GLYCOL, .4, 20, 2, 12, 20, 1320, .04850, 3693",
        "WATER, 0, 50, 2, 12, 20, 6329, .03612, 2583",
        "PROPYLENE_GLYCOL, .5, 50, 2, 12, 20, 1674, .03823, 2817",
        "ETHYLENE_GLYCOL, .4, 50, 2, 8, 10, 4186, .04104, 11679"
    })
    void loops(
            Coolant.Base base,
            double share,
            double celsius,
            double flow,
            double bore,
            double length,
            double reynolds,
            double friction,
            double pascal) {
        CoolantProperties coolant = new Melinder2010().at(new Mixture(base, share), celsius);
        LoopPath path = new LoopPath(bore, 0.007, length * 1000, List.of(), 0, LoopPath.NO_VALVE);
        LoopLosses losses = new DarcyWeisbach().losses(path, coolant, flow);
        near(reynolds, losses.reynolds(), 1e-3);
        near(friction, losses.friction(), 1e-3);
        near(pascal / 1000, losses.total(), 1e-3);
    }

    /** The first of those loops in its other figures: 1035.4 kg/m3, 1.3122 mPa s, 0.2947 m/s, 125.4 W/K. */
    @Test
    void firstLoopByHand() {
        CoolantProperties coolant = new Melinder2010().at(new Mixture(Coolant.Base.ETHYLENE_GLYCOL, 0.4), 50);
        near(1035.4, coolant.density(), 1e-4);
        near(1.3122e-3, coolant.viscosity(), 1e-4);
        near(125.4, 2 * coolant.carried(), 1e-3);
        LoopPath path = new LoopPath(12, 0.007, 20_000, List.of(), 0, LoopPath.NO_VALVE);
        near(.2947, new DarcyWeisbach().losses(path, coolant, 2).velocity(), 1e-3);
    }

    /** A valve of Kv 1 takes 1 bar at 1 m3/h of water of 1000 kg/m3: the definition (EN 60534, VDI/VDE 2173). */
    @Test
    void valve() {
        CoolantProperties thousand = new CoolantProperties(1000, 4186, 0.6, 1e-3);
        LoopPath path = new LoopPath(12, 0.007, 0, List.of(), 0, 1);
        near(100, new DarcyWeisbach().losses(path, thousand, 1000.0 / 60).total(), 1e-9);
    }

    /** Where laminar gives way to turbulent flow in a bend, both methods say nearly the same, and more flow never costs less. */
    @Test
    void bendsRiseWithFlow() {
        CoolantProperties coolant = new Melinder2010().at(Mixture.water(), 50);
        for (double radius : new double[] {40, 75, 150, 1000}) {
            LoopPath path = new LoopPath(12, 0.007, 0, List.of(new Bend(radius, 180, 1)), 0, LoopPath.NO_VALVE);
            double last = 0;
            for (double flow = 0; flow < 20; flow += 0.05) {
                double now = new DarcyWeisbach().losses(path, coolant, flow).bends();
                assertTrue(now >= last * 0.94, "radius " + radius + ", " + flow + " l/min: " + last + " then " + now);
                last = now;
            }
        }
    }

    private static void near(double expected, double value, double share) {
        assertEquals(expected, value, Math.abs(expected) * share);
    }
}
