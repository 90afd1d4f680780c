package org.runbend.optimizer.heat.flow;

/**
 * What a flow costs on its way.
 *
 * @param flow l/min
 * @param velocity m/s
 * @param reynolds Reynolds number
 * @param friction Darcy friction factor of the straights
 * @param straights kPa
 * @param bends kPa, their own friction included
 * @param fittings kPa
 * @param valve kPa
 */
public record LoopLosses(
        double flow,
        double velocity,
        double reynolds,
        double friction,
        double straights,
        double bends,
        double fittings,
        double valve) {
    /** kPa in all. */
    public double total() {
        return straights + bends + fittings + valve;
    }
}
