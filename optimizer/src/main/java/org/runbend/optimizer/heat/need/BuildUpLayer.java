package org.runbend.optimizer.heat.need;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A layer of a build-up.
 *
 * @param thickness mm
 * @param conductivity W/(m K)
 */
public record BuildUpLayer(double thickness, double conductivity) {
    /** Checks ranges. */
    public BuildUpLayer {
        Within.range("thickness of a layer", thickness, 0, 2000, "mm");
        Within.range("conductivity of a layer", conductivity, 0.002, 500, "W/(m K)");
    }

    /** Its resistance, m2 K/W. */
    public double resistance() {
        return thickness / 1000 / conductivity;
    }
}
