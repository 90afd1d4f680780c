package org.runbend.optimizer.heat.circuit;

import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A square metre of plated floor that stores heat.
 *
 * @param stack layers
 * @param pipe outer diameter, mm
 * @param toPlane from the coolant to the plates, m2 K/W
 * @param plate heat that the plates hold, J/(m2 K)
 * @param cover heat that the cover holds, J/(m3 K)
 * @param foam heat that the foam holds, J/(m3 K)
 */
public record FloorMass(Stack stack, double pipe, double toPlane, double plate, double cover, double foam) {
    /** Plywood of 500 kg/m3 and 1600 J/(kg K), EN ISO 10456, J/(m3 K). */
    public static final double PLY = 500.0 * 1600;

    /** Foam of 35 kg/m3 and 1450 J/(kg K), EN ISO 10456, J/(m3 K). */
    public static final double FOAM = 35.0 * 1450;

    /** Aluminium: 2700 kg/m3 and 900 J/(kg K), J/(m3 K). */
    public static final double ALUMINIUM = 2700.0 * 900;

    private static final double THINNEST = 1;

    /** Checks ranges; without cover or foam nothing stores heat there, a millimetre stands for it. */
    public FloorMass {
        Within.range("outer diameter of the pipe", pipe, 4, 63, "mm");
        Within.range("resistance from coolant to plate", toPlane, 1e-4, 1e3, "m2 K/W");
        Within.range("heat held by the plates", plate, 1, 1e6, "J/(m2 K)");
        Within.range("heat held by the cover", cover, 1e3, 1e7, "J/(m3 K)");
        Within.range("heat held by the foam", foam, 1e3, 1e7, "J/(m3 K)");
    }

    /** Thickness of the cover that is reckoned with, m. */
    double coverDepth() {
        return Math.max(THINNEST, stack.cover()) / 1000;
    }

    /** Thickness of the foam from the plates down, m. */
    double foamDepth() {
        return Math.max(THINNEST, stack.foam() + pipe) / 1000;
    }
}
