package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Somebody sleeps on a plated floor while the valve is stuck open.
 *
 * @param floor the floor without the mattress
 * @param supply highest temperature that the source can send, degrees C
 * @param room degrees C
 * @param outside degrees C
 */
public record SleepingProblem(FinProblem floor, double supply, double room, double outside) {
    /** Checks ranges. */
    public SleepingProblem {
        Within.range("highest supply", supply, -80, 200, "degrees C");
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
    }
}
