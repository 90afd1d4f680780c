package org.runbend.optimizer.heat.flow;

import org.runbend.optimizer.heat.coolant.CoolantProperties;

/**
 * Film coefficient of the coolant at the wall of the bore. Laminar: Nu = 3.66 (constant wall temperature, fully developed;
 * textbook). Turbulent over Re 4000: Gnielinski 1976, Int. Chemical Engineering 16, with Petukhov's friction; between 2300
 * and 4000 straight between both (Gnielinski 2013). All from memory.
 */
public final class Gnielinski1976 {
    private static final double LAMINAR = 3.66;
    private static final double LOWER = 2300;
    private static final double UPPER = 4000;

    /** Coefficient, W/(m2 K), in a bore in mm. */
    public double film(double reynolds, CoolantProperties coolant, double bore) {
        return nusselt(reynolds, coolant.prandtl()) * coolant.conductivity() / (bore / 1000);
    }

    private static double nusselt(double reynolds, double prandtl) {
        if (reynolds <= LOWER) {
            return LAMINAR;
        }
        if (reynolds >= UPPER) {
            return Math.max(LAMINAR, turbulent(reynolds, prandtl));
        }
        double share = (reynolds - LOWER) / (UPPER - LOWER);
        return (1 - share) * LAMINAR + share * Math.max(LAMINAR, turbulent(UPPER, prandtl));
    }

    private static double turbulent(double re, double pr) {
        double eighth = Math.pow(0.79 * Math.log(re) - 1.64, -2) / 8;
        return eighth * (re - 1000) * pr / (1 + 12.7 * Math.sqrt(eighth) * (Math.pow(pr, 2.0 / 3) - 1));
    }
}
