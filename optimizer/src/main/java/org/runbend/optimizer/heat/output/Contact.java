package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * What lies between the coolant and the plate besides the wall of the pipe.
 *
 * @param gap of air between pipe and plate, mm
 * @param film coefficient of the coolant in the bore, W/(m2 K); infinite where it is left out
 */
public record Contact(double gap, double film) {
    /** Pipe and plate touch, and the coolant's film is left out. */
    public static final Contact IDEAL = new Contact(0, Double.POSITIVE_INFINITY);

    /** A plate that a pipe was pressed into by hand: up to this, mm (common practice). */
    public static final double POOR = 0.2;

    private static final double AIR = 0.025;
    /** Share of the pipe's girth that the plate touches, fitted to finite elements: 0.05 to 0.5 mm of air within 1.3 %. */
    private static final double TOUCHED = 0.8;
    /** Only part of the bore is coupled to the plate: finite elements give 1.12 to 1.25 for 8 to 12 mm of bore. */
    private static final double COUPLED = 1.2;

    /** Checks ranges. */
    public Contact {
        Within.range("air between pipe and plate", gap, 0, 5, "mm");
        Within.range("film coefficient", film, 1, Double.POSITIVE_INFINITY, "W/(m2 K)");
    }

    /** Resistance of film and air for a metre of pipe in a plate, m K/W. */
    double inPlate(PipeWall pipe) {
        return film(pipe) + gap / (AIR * TOUCHED * Math.PI * pipe.outer());
    }

    /** Resistance of the film alone for a metre of pipe, m K/W. */
    double film(PipeWall pipe) {
        return COUPLED / (film * Math.PI * pipe.bore() / 1000);
    }
}
