package org.runbend.optimizer.heat.coolant;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A filled circuit that is warmed.
 *
 * @param mixture what is in it
 * @param litres how much, cold
 * @param coldest degrees C
 * @param hottest degrees C
 * @param closed whether it is closed to the air; else it has an open header tank
 * @param fill gauge pressure at the vessel when cold, kPa; closed circuits only
 * @param relief gauge pressure at which the relief valve opens, kPa; closed circuits only
 */
public record ExpansionProblem(
        Mixture mixture, double litres, double coldest, double hottest, boolean closed, double fill, double relief) {
    /** Checks ranges. */
    public ExpansionProblem {
        Within.range("litres in the circuit", litres, 0, 10_000, "l");
        Within.range("coldest temperature", coldest, -80, 100, "degrees C");
        Within.range("hottest temperature", hottest, coldest, 200, "degrees C");
        Within.rule(
                !closed || (fill >= 0 && fill < relief && relief <= 1000),
                "closed circuit: fill pressure %s kPa must be 0 or more and under the relief valve's %s kPa",
                fill,
                relief);
    }

    /** A circuit with an open header tank. */
    public static ExpansionProblem open(Mixture mixture, double litres, double coldest, double hottest) {
        return new ExpansionProblem(mixture, litres, coldest, hottest, false, 0, 0);
    }
}
