package org.runbend.optimizer.heat.flow;

import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A filled circuit at rest.
 *
 * @param mixture what is in it
 * @param coldest degrees C at which it is filled
 * @param hottest highest temperature anywhere, degrees C
 * @param height from the hottest point up to the top of the circuit or the level of the header tank, m; negative where the
 *     hottest point is the top
 * @param rise from the lowest point up to the top, m
 * @param closed whether the circuit is closed to the air
 */
public record StandingProblem(
        Mixture mixture, double coldest, double hottest, double height, double rise, boolean closed) {
    /** Checks ranges. */
    public StandingProblem {
        Within.range("temperature when filled", coldest, -80, 100, "degrees C");
        Within.range("hottest temperature", hottest, -80, 200, "degrees C");
        Within.range("height over the hottest point", height, -5, 30, "m");
        Within.range("rise of the circuit", rise, 0, 30, "m");
    }
}
