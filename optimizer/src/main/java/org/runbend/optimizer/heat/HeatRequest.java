package org.runbend.optimizer.heat;

import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * What a job may say of heat beyond coolant, temperatures and pump.
 *
 * @param source highest temperature before mixing, degrees C
 * @param volumeFlow through all loops, l/min; where it is given no pump sets the flow
 * @param spread drop of each loop, K; where neither pump nor flow is given
 * @param start temperature before a warm-up, degrees C
 * @param wanted heat into the room, W
 * @param humidity relative humidity of the room's air, 0 to 1
 * @param timber whether the floor's top is timber
 * @param bath whether it is a bath's floor
 * @param sleeping whether somebody sleeps on it
 * @param metalUnder whether metal lies under the insulation
 * @param space how the space loses heat
 * @param circuit what else is in the circuit
 */
public record HeatRequest(
        OptionalDouble source,
        OptionalDouble volumeFlow,
        OptionalDouble spread,
        OptionalDouble start,
        OptionalDouble wanted,
        double humidity,
        boolean timber,
        boolean bath,
        Sleeping sleeping,
        boolean metalUnder,
        Optional<SpaceLoss> space,
        CircuitParts circuit) {
    /** Half of what air can hold: a lived-in room (common practice). */
    public static final double USUAL_HUMIDITY = 0.5;

    /** A job that says nothing of it; metal under the floor is the rule in vehicles, and looking at it hurts nobody. */
    public static final HeatRequest NONE = new HeatRequest(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            USUAL_HUMIDITY,
            false,
            false,
            Sleeping.UNSAID,
            true,
            Optional.empty(),
            CircuitParts.NONE);

    /** Checks ranges. */
    public HeatRequest {
        source.ifPresent(s -> Within.range("source", s, -60, 150, "degrees C"));
        volumeFlow.ifPresent(f -> Within.range("volumeFlow", f, 0, 1000, "l/min"));
        spread.ifPresent(s -> Within.range("spread", s, 0.1, 60, "K"));
        start.ifPresent(s -> Within.range("start", s, -60, 80, "degrees C"));
        wanted.ifPresent(w -> Within.range("wanted", w, 0, 1e6, "W"));
        Within.range("humidity", humidity, 0.01, 1, "");
    }
}
