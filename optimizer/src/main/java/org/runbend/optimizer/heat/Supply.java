package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * What comes to the floor.
 *
 * @param mixture coolant
 * @param temperature into the floor, after mixing, degrees C
 * @param source highest before mixing, degrees C, if known
 * @param coldest that the coolant must stand without freezing, degrees C, if known
 * @param flow what sets the flow
 */
public record Supply(
        Mixture mixture, double temperature, Optional<Double> source, Optional<Double> coldest, FlowRequest flow) {
    /** Checks ranges. */
    public Supply {
        Within.range("temperature into the floor", temperature, -60, 150, "degrees C");
        source.ifPresent(s -> Within.range("temperature of the source", s, -60, 150, "degrees C"));
        coldest.ifPresent(c -> Within.range("coldest temperature", c, -80, 60, "degrees C"));
    }

    /** Highest that can come to the floor when nothing mixes, degrees C. */
    public double highest() {
        return Math.max(temperature, source.orElse(temperature));
    }
}
