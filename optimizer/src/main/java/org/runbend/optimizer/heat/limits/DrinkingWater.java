package org.runbend.optimizer.heat.limits;

import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.coolant.Mixture;

/** Ethylene glycol is poison: a single wall must not divide it from drinking water (EN 1717, fluid category 4, from memory). */
public final class DrinkingWater {
    /** The finding for the number of walls between coolant and drinking water. */
    public Finding judge(Mixture mixture, int walls) {
        int needed = mixture.base() == Coolant.Base.ETHYLENE_GLYCOL && mixture.massShare() > 0 ? 2 : 1;
        return Finding.atLeast(
                "walls between coolant and drinking water at least",
                walls,
                needed,
                "walls",
                Finding.Verdict.FAIL,
                "EN 1717, from memory: ethylene glycol is poisonous");
    }
}
