package org.runbend.optimizer.heat.output;

/**
 * What EN 1264-2 and ISO 11855-2 say of every floor: the basic characteristic q = 8.92 dT^1.1 of a surface, and the
 * logarithmic mean of flow and return over the room.
 */
public final class En1264 {
    private static final double FACTOR = 8.92;
    private static final double POWER = 1.1;

    private En1264() {}

    /** Flux for a mean excess of the surface over the room, W/m2; heat into the floor is negative. */
    public static double flux(double excess) {
        return Math.copySign(FACTOR * Math.pow(Math.abs(excess), POWER), excess);
    }

    /** Excess of the surface for a flux in W/m2, K. */
    public static double excess(double flux) {
        return Math.copySign(Math.pow(Math.abs(flux) / FACTOR, 1 / POWER), flux);
    }

    /**
     * Logarithmic mean of flow and return over the room, K (equation A.1). 0 where one of them is not warmer than the room: the
     * standard knows no floor that both heats and cools.
     */
    public static double logMean(double flow, double back, double room) {
        double warm = flow - room;
        double cool = back - room;
        if (!(warm > 0 && cool > 0)) {
            return 0;
        }
        double ratio = warm / cool;
        return Math.abs(ratio - 1) < 1e-9 ? (warm + cool) / 2 : (warm - cool) / Math.log(ratio);
    }
}
