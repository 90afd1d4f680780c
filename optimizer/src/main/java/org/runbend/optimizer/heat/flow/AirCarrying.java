package org.runbend.optimizer.heat.flow;

/** Velocity that carries air bubbles along with the coolant, down pipes included: 0.2 to 0.3 m/s (common practice). */
public final class AirCarrying {
    /** Under this air stays where it is, m/s. */
    public static final double LEAST = 0.2;

    /** With this a loop is flushed free of air, m/s. */
    public static final double FLUSHING = 0.3;

    /** Flow for flushing a bore in mm, l/min. */
    public double flushing(double bore) {
        return Math.PI / 4 * bore * bore * 1e-6 * FLUSHING * 60_000;
    }
}
