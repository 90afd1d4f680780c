package org.runbend.optimizer.heat.flow;

/**
 * Darcy friction factor over laminar, critical and turbulent flow: Churchill 1977, Friction-factor equation spans all fluid-flow
 * regimes, Chemical Engineering 84(24). f = 8 [(8/Re)^12 + (A + B)^-1.5]^(1/12).
 */
public final class Churchill1977 {
    /** Under this the equation's own powers overflow; there 64/Re is exact to every digit. */
    private static final double CREEPING = 10;

    /**
     * Darcy friction factor; for a standstill that of Re = 1e-6, so that a loss is 0 there and no division by 0.
     *
     * @param roughness of the wall over the bore
     */
    public double friction(double reynolds, double roughness) {
        double re = Math.max(reynolds, 1e-6);
        if (re < CREEPING) {
            return 64 / re;
        }
        double a = Math.pow(2.457 * Math.log(1 / (Math.pow(7 / re, 0.9) + 0.27 * roughness)), 16);
        double b = Math.pow(37_530 / re, 16);
        return 8 * Math.pow(Math.pow(8 / re, 12) + Math.pow(a + b, -1.5), 1.0 / 12);
    }
}
