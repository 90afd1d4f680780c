package org.runbend.optimizer.heat.flow;

/**
 * Loss coefficient of a smooth bend in turbulent flow, its own friction included: Rennels and Hudson 2012, Pipe Flow, K = f a R/d +
 * (0.10 + 2.4 f) sin(a/2) + 6.6 f (sqrt(sin(a/2)) + sin(a/2)) / (R/d)^(4a/pi).
 */
public final class Rennels2012 {
    /**
     * Loss coefficient over the velocity head.
     *
     * @param friction Darcy friction factor of the straight pipe
     * @param angle radians, over 0 up to pi
     * @param ratio radius of the centreline over the bore
     */
    public double loss(double friction, double angle, double ratio) {
        double sine = Math.sin(angle / 2);
        return friction * angle * ratio
                + (0.10 + 2.4 * friction) * sine
                + 6.6 * friction * (Math.sqrt(sine) + sine) / Math.pow(ratio, 4 * angle / Math.PI);
    }
}
