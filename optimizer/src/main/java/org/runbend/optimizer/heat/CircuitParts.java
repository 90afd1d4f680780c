package org.runbend.optimizer.heat;

import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.heat.circuit.Cylinder;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * What else is in the circuit.
 *
 * @param source what warms the coolant, if known
 * @param litres of coolant outside the loops and their tails
 * @param cylinder if there is one
 * @param walls between coolant and drinking water, if they meet
 * @param blowers heat that they take, W
 * @param sensor of the floor, if there is one
 * @param closed whether the circuit is closed to the air
 * @param relief gauge pressure of its relief valve, kPa; closed circuits only
 * @param rise from its lowest to its highest point, m
 * @param head of the highest point or the tank's level over the hottest point, m
 */
public record CircuitParts(
        Optional<HeatSource> source,
        double litres,
        Optional<Cylinder> cylinder,
        OptionalInt walls,
        double blowers,
        Optional<FloorSensor> sensor,
        boolean closed,
        double relief,
        double rise,
        double head) {
    /** Nothing known: an open header tank at the height of the heater. */
    public static final CircuitParts NONE = new CircuitParts(
            Optional.empty(), 0, Optional.empty(), OptionalInt.empty(), 0, Optional.empty(), false, 0, 0, 0);

    /** Checks ranges. */
    public CircuitParts {
        Within.range("coolant in the rest of the circuit", litres, 0, 10_000, "l");
        Within.range("heat of the blowers", blowers, 0, 1e5, "W");
        Within.range("relief valve", relief, closed ? 60 : 0, 1000, "kPa");
        Within.range("rise of the circuit", rise, 0, 30, "m");
        Within.range("height over the hottest point", head, -5, 30, "m");
    }
}
