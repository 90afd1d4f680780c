package org.runbend.optimizer.heat.coolant;

import java.util.Locale;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Water, or glycol in water.
 *
 * @param base what is mixed with water
 * @param massShare mass fraction of the glycol, 0 to 0.6; 0 for water
 */
public record Mixture(Coolant.Base base, double massShare) {
    /** Range of the polynomials of Melinder 2010; pure glycol lies far outside it. */
    public static final double RICHEST = 0.6;

    /** kg/m3 at 20 degrees C, from memory (a stored map of ASHRAE data agrees to 0.003 in the share). */
    private static final double ETHYLENE = 1113.2;

    private static final double PROPYLENE = 1036.1;
    private static final double WATER = 998.2;

    /** Checks the share. */
    public Mixture {
        Within.range("share of glycol by mass", massShare, 0, RICHEST, "");
        Within.rule(
                base != Coolant.Base.WATER || massShare == 0, "water holds no glycol: share %s must be 0", massShare);
    }

    /** Plain water. */
    public static Mixture water() {
        return new Mixture(Coolant.Base.WATER, 0);
    }

    /**
     * From a share by volume, both parts measured at 20 degrees C: w = v rho_g / (v rho_g + (1 - v) rho_w).
     *
     * @throws org.runbend.optimizer.heat.quantity.OddInput where the mixture is richer than the data reach
     */
    public static Mixture ofVolume(Coolant.Base base, double volumeShare) {
        if (base == Coolant.Base.WATER) {
            return water();
        }
        Within.range("share of glycol by volume", volumeShare, 0, 1, "");
        double glycol = volumeShare * density(base);
        double mass = glycol / (glycol + (1 - volumeShare) * WATER);
        Within.rule(
                mass <= RICHEST,
                "%.0f %% glycol by volume is %.0f %% by mass: properties are known up to %.0f %% by mass",
                100 * volumeShare,
                100 * mass,
                100 * RICHEST);
        return new Mixture(base, mass);
    }

    /** Share of the glycol by volume, both parts measured at 20 degrees C. */
    public double volumeShare() {
        if (base == Coolant.Base.WATER) {
            return 0;
        }
        double glycol = massShare / density(base);
        return glycol / (glycol + (1 - massShare) / WATER);
    }

    /** Words for a paper. */
    public String words() {
        return base == Coolant.Base.WATER
                ? "water"
                : String.format(
                        Locale.ROOT,
                        "%s glycol %.0f %% by volume",
                        base == Coolant.Base.ETHYLENE_GLYCOL ? "ethylene" : "propylene",
                        100 * volumeShare());
    }

    private static double density(Coolant.Base base) {
        return base == Coolant.Base.ETHYLENE_GLYCOL ? ETHYLENE : PROPYLENE;
    }
}
