package org.runbend.optimizer.heat.coolant;

import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Where a coolant boils at a pressure: Antoine's equation for water (constants for 1 to 100 and 99 to 374 degrees C, from
 * memory) with Raoult's law for glycol, whose own vapour is left out. That says a little less than tables of mixtures do.
 */
public final class BoilingPoint {
    private static final double MMHG = 0.133322;
    private static final double WATER_MOLE = 18.015;
    private static final double ETHYLENE_MOLE = 62.07;
    private static final double PROPYLENE_MOLE = 76.09;
    private static final double ATMOSPHERE = 101.325;

    /**
     * Degrees C.
     *
     * @param absolute absolute pressure, kPa, 1 to 2000
     */
    public double at(Mixture mixture, double absolute) {
        Within.range("absolute pressure", absolute, 1, 2000, "kPa");
        double share = mixture.massShare();
        double mole = mixture.base() == Coolant.Base.PROPYLENE_GLYCOL ? PROPYLENE_MOLE : ETHYLENE_MOLE;
        double water = (1 - share) / WATER_MOLE;
        double pressure = absolute * (water + share / mole) / water;
        return pressure < ATMOSPHERE
                ? antoine(8.07131, 1730.63, 233.426, pressure)
                : antoine(8.14019, 1810.94, 244.485, pressure);
    }

    private static double antoine(double a, double b, double c, double pressure) {
        return b / (a - Math.log10(pressure / MMHG)) - c;
    }
}
