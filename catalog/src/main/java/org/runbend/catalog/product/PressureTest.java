package org.runbend.catalog.product;

import java.util.OptionalDouble;

/**
 * How the maker of a pipe wants a loop of it tested before it is covered.
 *
 * @param pressure bar over the air
 * @param minutes how long it is watched
 * @param drop most that the reading may fall in that time, bar, if it is told
 */
public record PressureTest(double pressure, double minutes, OptionalDouble drop) {
    /** Checks that there is something to watch. */
    public PressureTest {
        Require.that(pressure > 0 && pressure <= 20, "test: pressure %s bar must be over 0 and at most 20", pressure);
        Require.that(minutes > 0 && minutes <= 2880, "test: minutes %s must be over 0 and at most 2880", minutes);
        Require.that(
                drop.isEmpty() || (drop.getAsDouble() >= 0 && drop.getAsDouble() < pressure),
                "test: drop must be under the pressure");
    }
}
