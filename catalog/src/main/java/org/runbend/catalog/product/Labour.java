package org.runbend.catalog.product;

import java.util.OptionalLong;

/**
 * What cutting a kit takes of a worker's time.
 *
 * @param cut seconds for a cut of the saw, handling included
 * @param stopSetting seconds to set the saw's stop to another length
 * @param coilChange seconds to mount a coil
 * @param hour what an hour costs, minor units, if that is known
 */
public record Labour(double cut, double stopSetting, double coilChange, OptionalLong hour) {
    /** Greatest time of a step, seconds. */
    public static final double LONGEST = 36_000;

    /** What plates are chosen by where a catalog has no times: 20 s a cut, a minute for the stop, three for a coil (own figures). */
    public static final Labour USUAL = new Labour(20, 60, 180, OptionalLong.empty());

    /** Checks ranges. */
    public Labour {
        Require.that(cut >= 0 && cut <= LONGEST, "labour: cut %s s must be 0 to %s s", cut, LONGEST);
        Require.that(
                stopSetting >= 0 && stopSetting <= LONGEST,
                "labour: stopSetting %s s must be 0 to %s s",
                stopSetting,
                LONGEST);
        Require.that(
                coilChange >= 0 && coilChange <= LONGEST,
                "labour: coilChange %s s must be 0 to %s s",
                coilChange,
                LONGEST);
    }
}
