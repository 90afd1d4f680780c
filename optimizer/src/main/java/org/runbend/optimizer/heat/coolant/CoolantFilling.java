package org.runbend.optimizer.heat.coolant;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * How much coolant a circuit takes.
 *
 * @param loop litres in the pipes on the floor
 * @param tails litres in the tails
 * @param rest litres in the rest of the circuit
 * @param mixture what is filled in
 */
public record CoolantFilling(double loop, double tails, double rest, Mixture mixture) {
    /** Checks that nothing is negative. */
    public CoolantFilling {
        Within.range("litres in the loop", loop, 0, 10_000, "l");
        Within.range("litres in the tails", tails, 0, 10_000, "l");
        Within.range("litres in the rest of the circuit", rest, 0, 10_000, "l");
    }

    /** Litres in a pipe of a bore and a length, both in mm. */
    public static double inPipe(double bore, double length) {
        return Math.PI / 4 * bore * bore * length * 1e-6;
    }

    /** Litres in all. */
    public double litres() {
        return loop + tails + rest;
    }

    /** Litres of glycol to pack. */
    public double glycol() {
        return litres() * mixture.volumeShare();
    }

    /** Litres of water to add. */
    public double water() {
        return litres() - glycol();
    }
}
