package org.runbend.optimizer.heat.flow;

import java.util.List;

/**
 * How the valves of the loops are to be set.
 *
 * @param pressure that every loop takes then, kPa
 * @param settings one for each loop
 */
public record BalanceSolution(double pressure, List<Setting> settings) {
    /**
     * A valve's setting.
     *
     * @param throttled what the valve must take on top of the open loop, kPa; 0 for the loop that sets the pressure
     * @param kv of the throttle alone, m3/h; infinite where nothing is throttled
     */
    public record Setting(double throttled, double kv) {}

    /** Copies the list. */
    public BalanceSolution {
        settings = List.copyOf(settings);
    }
}
