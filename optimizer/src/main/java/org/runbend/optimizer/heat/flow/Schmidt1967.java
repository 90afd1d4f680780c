package org.runbend.optimizer.heat.flow;

/** Where flow in a curved pipe turns turbulent: Schmidt 1967, Chemie Ingenieur Technik 39: Re = 2300 [1 + 8.6 (d / 2R)^0.45]. */
public final class Schmidt1967 {
    /** The Reynolds number for a bore and a radius of the centreline, both in mm. */
    public double critical(double bore, double radius) {
        return 2300 * (1 + 8.6 * Math.pow(bore / (2 * radius), 0.45));
    }
}
