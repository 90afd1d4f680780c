package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Greatest flux of a floor of types A and C at a spacing of 0.15 m, at which its hottest spot reaches the limit: EN 1264-2, ISO
 * 11855-2: q = phi BG (dT / phi)^nG with phi = ((limit - room) / 9)^1.1. Plates are type B, whose tables are not known to us: for
 * them the peak of the fin method is used. This one stands beside it.
 */
public final class En1264LimitCurve {
    private static final double[] COVERS = {.01, .0208, .0292, .0375, .0458, .0542, .0625, .0708, .0792};
    private static final double[] BG = {51, 61.1, 69.2, 76.3, 82.7, 87.5, 91.8, 95.1, 97.8};
    private static final double[] NG = {.088, .085, .082, .076, .055, .038, .024, .014, .006};
    private static final double[] THICK = {.173, .2, .25, .3, .35, .4, .45, .5, .55, .6, .65, .7, .75};
    private static final double[] THICK_BG = {27.5, 40, 57.5, 69.5, 78.2, 84.4, 88.3, 91.6, 94, 96.3, 98.6, 99.8, 100};
    private static final double[] THICK_NG = {.32, .23, .145, .097, .067, .048, .033, .023, .015, .009, .005, .002, 0};
    private static final double LAST = .0792;
    private static final double SPACING = 0.15;

    /**
     * Flux on the limit curve, W/m2.
     *
     * @param cover thickness, m
     * @param conductivity W/(m K)
     * @param excess logarithmic mean excess of the coolant, K
     * @param limit of the surface, degrees C
     * @param room degrees C
     */
    public double flux(double cover, double conductivity, double excess, double limit, double room) {
        Within.range("cover", cover, 0, 0.2, "m");
        Within.range("conductivity of the cover", conductivity, 0.01, 500, "W/(m K)");
        Within.range("excess of the coolant", excess, 0, 200, "K");
        Within.rule(limit > room, "limit of the surface %s must be over the room's %s degrees C", limit, room);
        double phi = Math.pow((limit - room) / 9, 1.1);
        double resistance = cover / conductivity;
        boolean thin = resistance <= LAST;
        double factor = thin ? Between.line(COVERS, BG, resistance) : Between.line(THICK, THICK_BG, cover / SPACING);
        double power = thin ? Between.line(COVERS, NG, resistance) : Between.line(THICK, THICK_NG, cover / SPACING);
        return phi * factor * Math.pow(excess / phi, power);
    }
}
