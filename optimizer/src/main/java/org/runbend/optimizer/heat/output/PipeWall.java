package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A pipe as heat passes it.
 *
 * @param outer diameter, mm
 * @param wall thickness, mm
 * @param conductivity W/(m K)
 */
public record PipeWall(double outer, double wall, double conductivity) {
    /** PE-X: EN 1264-2, ISO 11855-2. */
    public static final double PE_X = 0.35;

    /** PE-RT, from memory. */
    public static final double PE_RT = 0.40;

    /** Plastic with a layer of aluminium: a public maker's document. */
    public static final double MULTILAYER = 0.43;

    /** Rubber hose: EN ISO 10456 for EPDM. */
    public static final double RUBBER = 0.25;

    /** Checks ranges. */
    public PipeWall {
        Within.range("outer diameter of the pipe", outer, 4, 63, "mm");
        Within.range("wall of the pipe", wall, 0.2, outer / 2 - 0.5, "mm");
        Within.range("conductivity of the pipe", conductivity, 0.05, 500, "W/(m K)");
    }

    /** Inner diameter, mm. */
    public double bore() {
        return outer - 2 * wall;
    }

    /** ln(D / d), the shape of the wall. */
    double shape() {
        return Math.log(outer / bore());
    }
}
