package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * What lies round the floor.
 *
 * @param room degrees C
 * @param outside design temperature under and round it, degrees C
 * @param start temperature of the cold floor before a warm-up, degrees C
 * @param space how the space loses heat, if known
 * @param humidity relative humidity of the room's air, 0 to 1
 * @param bath whether it is a bath's floor
 * @param sleeping whether somebody sleeps on it
 * @param metalUnder whether metal lies under the insulation
 */
public record Surroundings(
        double room,
        double outside,
        double start,
        Optional<SpaceLoss> space,
        double humidity,
        boolean bath,
        Sleeping sleeping,
        boolean metalUnder) {
    /** Checks ranges. */
    public Surroundings {
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        Within.range("temperature at the start", start, -60, 80, "degrees C");
        Within.range("relative humidity", humidity, 0.01, 1, "");
    }
}
