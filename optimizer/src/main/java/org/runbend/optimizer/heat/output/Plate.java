package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Sheet of a spreader plate.
 *
 * @param thickness mm
 * @param conductivity W/(m K)
 */
public record Plate(double thickness, double conductivity) {
    /** Aluminium in EN 1264 (from memory); alloys lie between 160 (EN ISO 10077-2) and 230 (CIBSE Guide A). */
    public static final double ALUMINIUM = 200;

    /** Steel in EN 1264 (from memory). */
    public static final double STEEL = 52;

    /** Checks ranges. */
    public Plate {
        Within.range("thickness of the plate", thickness, 0.01, 10, "mm");
        Within.range("conductivity of the plate", conductivity, 0.1, 500, "W/(m K)");
    }

    /** What it carries sideways, W/K. */
    public double sideways() {
        return conductivity * thickness / 1000;
    }
}
