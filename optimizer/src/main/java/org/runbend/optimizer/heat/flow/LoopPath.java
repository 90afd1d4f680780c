package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * What the coolant passes, one thing after the other.
 *
 * @param bore inner diameter, mm
 * @param roughness of the wall, mm
 * @param straight length without the bends, mm
 * @param bends bends
 * @param fittings sum of the loss coefficients of fittings, over the velocity head in the bore
 * @param kv flow in m3/h at which the valve takes 1 bar of water; infinite where there is none
 */
public record LoopPath(double bore, double roughness, double straight, List<Bend> bends, double fittings, double kv) {
    /** Plastic pipe, mm: a maker's figure for multilayer pipe; others 0.0015 to 0.007 (from memory). */
    public static final double PLASTIC = 0.007;

    /** A valve that is not there. */
    public static final double NO_VALVE = Double.POSITIVE_INFINITY;

    /** Checks ranges. */
    public LoopPath {
        bends = List.copyOf(bends);
        Within.range("bore", bore, 1, 200, "mm");
        Within.range("roughness", roughness, 0, bore / 20, "mm");
        Within.range("length of pipe", straight, 0, 1e7, "mm");
        Within.range("loss coefficients of the fittings", fittings, 0, 10_000, "");
        Within.range("valve Kv", kv, 1e-6, Double.POSITIVE_INFINITY, "m3/h");
    }

    /** Length with the bends, mm. */
    public double length() {
        return straight
                + bends.stream().mapToDouble(b -> b.count() * b.length()).sum();
    }
}
