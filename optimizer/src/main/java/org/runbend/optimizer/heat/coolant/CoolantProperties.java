package org.runbend.optimizer.heat.coolant;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * Properties of a coolant at one temperature.
 *
 * @param density kg/m3
 * @param heatCapacity J/(kg K)
 * @param conductivity W/(m K)
 * @param viscosity dynamic, Pa s
 */
public record CoolantProperties(double density, double heatCapacity, double conductivity, double viscosity) {
    /** Checks that each is a number over 0. */
    public CoolantProperties {
        Within.range("density", density, 1, 5000, "kg/m3");
        Within.range("heat capacity", heatCapacity, 100, 10_000, "J/(kg K)");
        Within.range("conductivity", conductivity, 0.001, 10, "W/(m K)");
        Within.range("viscosity", viscosity, 1e-6, 1000, "Pa s");
    }

    /** Prandtl number. */
    public double prandtl() {
        return viscosity * heatCapacity / conductivity;
    }

    /** Heat that one litre a minute carries for each degree, W/K. */
    public double carried() {
        return density * heatCapacity / 60_000;
    }
}
