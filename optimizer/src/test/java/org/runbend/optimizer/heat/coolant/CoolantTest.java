package org.runbend.optimizer.heat.coolant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.quantity.OddInput;

class CoolantTest {
    private static final Mixture WATER = Mixture.water();

    /** Same polynomials, another program: five figures are printed. */
    @ParameterizedTest(name = "{0} {1} at {3}")
    @CsvFileSource(resources = "melinder.csv", useHeadersInDisplayName = true, numLinesToSkip = 1)
    void melinderAsCoolPropReadsIt(
            Coolant.Base base,
            double share,
            double freezes,
            double celsius,
            double rho,
            double cp,
            double k,
            double mu) {
        Mixture mixture = new Mixture(base, share);
        CoolantProperties p = new Melinder2010().at(mixture, celsius);
        near(rho, p.density(), 6e-5);
        near(cp, p.heatCapacity(), 6e-5);
        near(k, p.conductivity(), 6e-5);
        near(mu, p.viscosity() * 1000, 6e-5);
        assertEquals(freezes, new FreezingPoint().of(mixture), 0.006);
    }

    /** IAPWS water at 1 atm by CoolProp: within 0.2 % (density, heat capacity), 0.5 % (conductivity), 1.4 % (viscosity). */
    @ParameterizedTest
    @CsvSource({
        "20, 998.21, 4184.1, .59801, 1.0016",
        "40, 992.22, 4179.4, .62849, .65273",
        "60, 983.20, 4185.0, .65100, .46604",
        "80, 971.79, 4196.8, .66699, .35405"
    })
    void waterAgainstIapws(double celsius, double rho, double cp, double k, double mu) {
        CoolantProperties p = new Melinder2010().at(WATER, celsius);
        near(rho, p.density(), 0.002);
        near(cp, p.heatCapacity(), 0.002);
        near(k, p.conductivity(), 0.005);
        near(mu, p.viscosity() * 1000, 0.0145);
    }

    /** The ASHRAE data of 2001, an independent measurement. */
    @ParameterizedTest(name = "{0} {1} at {4}")
    @CsvFileSource(resources = "ashrae.csv", numLinesToSkip = 1)
    void agreesWithAshrae(
            Coolant.Base base,
            double volume,
            double mass,
            double freezes,
            double celsius,
            double rho,
            double cp,
            double k,
            double mu) {
        Mixture mixture = Mixture.ofVolume(base, volume);
        assertEquals(mass, mixture.massShare(), 0.0035);
        assertEquals(volume, mixture.volumeShare(), 1e-12);
        CoolantProperties p = new Melinder2010().at(new Mixture(base, mass), celsius);
        near(rho, p.density(), 0.0095);
        near(cp, p.heatCapacity(), 0.02);
        near(k, p.conductivity(), 0.0195);
        boolean coldAndLean = base == Coolant.Base.ETHYLENE_GLYCOL && volume == 0.3 && celsius <= 20;
        near(mu, p.viscosity() * 1000, coldAndLean ? 0.112 : 0.06);
        assertEquals(freezes, new FreezingPoint().of(mixture), 2.8);
    }

    /** Boiling of water at pressures of the steam tables, from memory: 60, 80, 100, 120, 151.8 degrees C. */
    @ParameterizedTest
    @CsvSource({"19.946, 60", "47.414, 80", "101.42, 100", "198.67, 120", "500, 151.83"})
    void waterBoils(double pressure, double celsius) {
        assertEquals(celsius, new BoilingPoint().at(WATER, pressure), 0.3);
    }

    @Test
    void glycolBoilsHigher() {
        double half = new BoilingPoint().at(Mixture.ofVolume(Coolant.Base.ETHYLENE_GLYCOL, 0.5), 101.325);
        // Handbook tables for 50 % ethylene glycol by volume: about 107 degrees C (from memory).
        assertEquals(107, half, 1.5);
    }

    /** By the IAPWS densities: 999.84 kg/m3 at 0, 971.79 at 80 degrees C (2.886 %). */
    @Test
    void waterExpands() {
        ExpansionSolution open = new ThermalExpansion().solve(ExpansionProblem.open(WATER, 10, 0, 80));
        assertEquals(0.2886, open.litres(), 0.005);
        assertEquals(1.5 * open.litres(), open.room(), 1e-12);
        ExpansionSolution closed = new ThermalExpansion().solve(new ExpansionProblem(WATER, 10, 0, 80, true, 100, 300));
        // By hand: 0.2851 l x (270 + 101.3) / (270 - 100).
        assertEquals(closed.litres() * 371.325 / 170, closed.room(), 1e-9);
    }

    @Test
    void fillsAndPacks() {
        // 100 m of 12 mm bore hold 11.31 l.
        assertEquals(11.31, CoolantFilling.inPipe(12, 100_000), 0.001);
        CoolantFilling filling = new CoolantFilling(3, 1, 6, Mixture.ofVolume(Coolant.Base.PROPYLENE_GLYCOL, 0.4));
        assertEquals(4, filling.glycol(), 1e-9);
        assertEquals(6, filling.water(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"1, 100 % glycol by volume is 100 % by mass", "0.7, 70 % glycol by volume is 72 % by mass"})
    void tooRichIsOneLine(double share, String line) {
        String message = assertThrows(OddInput.class, () -> Mixture.ofVolume(Coolant.Base.ETHYLENE_GLYCOL, share))
                .getMessage();
        assertTrue(message.startsWith(line), message);
        assertEquals(1, message.lines().count());
    }

    @Test
    void anyMixtureAtAnyTemperatureHasProperties() {
        SplittableRandom random = new SplittableRandom(16);
        for (int i = 0; i < 5000; i++) {
            Coolant.Base base = random.nextBoolean() ? Coolant.Base.ETHYLENE_GLYCOL : Coolant.Base.PROPYLENE_GLYCOL;
            Mixture mixture = new Mixture(base, random.nextDouble() * Mixture.RICHEST);
            double celsius = -90 + 250 * random.nextDouble();
            CoolantProperties p = new Melinder2010().at(mixture, celsius);
            assertTrue(p.density() > 900 && p.density() < 1150, () -> mixture + " at " + celsius + ": " + p);
            assertTrue(p.viscosity() > 1e-4 && p.viscosity() < 5, () -> mixture + " at " + celsius + ": " + p);
        }
    }

    private static void near(double expected, double value, double share) {
        assertEquals(expected, value, Math.abs(expected) * share);
    }
}
