package org.runbend.optimizer.heat.circuit;

import java.util.Optional;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A floor in its circuit. A diverter valve sends the coolant to the floor or, by the cylinder, back.
 *
 * @param mass a square metre of the floor
 * @param area plated floor, m2
 * @param mixture coolant
 * @param litres of coolant in the circuit
 * @param flow l/min through the floor when the valve is open to it
 * @param mixed highest that goes to the floor after mixing, degrees C; infinite where nothing mixes; a valve stuck open sends all
 * @param source what warms the coolant
 * @param cylinder if there is one
 * @param blowers heat that they take while the coolant is over 40 degrees C, W
 * @param sensor what sets the valve; without one it is open to the floor
 * @param stuckOpen whether the valve stays open to the floor whatever the sensor says
 * @param start temperature of floor and coolant, degrees C
 * @param room degrees C
 * @param outside degrees C
 * @param minutes how long to look
 */
public record CircuitProblem(
        FloorMass mass,
        double area,
        Mixture mixture,
        double litres,
        double flow,
        double mixed,
        HeatSource source,
        Optional<Cylinder> cylinder,
        double blowers,
        Optional<FloorSensor> sensor,
        boolean stuckOpen,
        double start,
        double room,
        double outside,
        int minutes) {
    /** Checks ranges. */
    public CircuitProblem {
        Within.range("plated floor", area, 0.01, 1000, "m2");
        Within.range("coolant in the circuit", litres, 0.1, 10_000, "l");
        Within.range("flow", flow, 0, 1000, "l/min");
        Within.range("temperature after mixing", mixed, -60, Double.POSITIVE_INFINITY, "degrees C");
        Within.range("heat of the blowers", blowers, 0, 1e5, "W");
        Within.range("temperature at the start", start, -60, 80, "degrees C");
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        Within.range("minutes", minutes, 3, 10_000, "");
    }
}
