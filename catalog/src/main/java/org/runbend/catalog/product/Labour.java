package org.runbend.catalog.product;

import java.util.OptionalLong;

/**
 * What cutting a kit and fitting it take of a worker's time, and what heat is worth against it.
 *
 * @param cut seconds for a cut of the saw, handling included
 * @param stopSetting seconds to set the saw's stop to another length
 * @param coilChange seconds to mount a coil
 * @param bend seconds for a quarter bend: marked out, routed, the pipe laid round it
 * @param groove seconds for a metre of groove, the pipe in it
 * @param plate seconds for a plate laid
 * @param watt seconds of work that a watt more into the room is worth
 * @param hour what an hour costs, minor units, if that is known
 */
public record Labour(
        double cut,
        double stopSetting,
        double coilChange,
        double bend,
        double groove,
        double plate,
        double watt,
        OptionalLong hour) {
    /** Greatest time of a step, seconds. */
    public static final double LONGEST = 36_000;

    /**
     * What is reckoned with where a catalog has no times: 20 s a cut, a minute for the stop, three for a coil; 40 s a quarter bend,
     * 30 s a metre of groove, 20 s a plate (own figures, none measured); a watt is worth four
     * minutes, for about that is what one costs where a kit of 350 EUR gives 120 W and an hour costs 42 EUR (examples of ours).
     */
    public static final Labour USUAL = new Labour(20, 60, 180, OptionalLong.empty());

    /** Times of cutting, the usual ones for fitting. */
    public Labour(double cut, double stopSetting, double coilChange, OptionalLong hour) {
        this(cut, stopSetting, coilChange, 40, 30, 20, 240, hour);
    }

    /** Checks ranges. */
    public Labour {
        Require.that(isTime(cut), "labour: cut %s s must be 0 to %s s", cut, LONGEST);
        Require.that(isTime(stopSetting), "labour: stopSetting %s s must be 0 to %s s", stopSetting, LONGEST);
        Require.that(isTime(coilChange), "labour: coilChange %s s must be 0 to %s s", coilChange, LONGEST);
        Require.that(isTime(bend), "labour: bend %s s must be 0 to %s s", bend, LONGEST);
        Require.that(isTime(groove), "labour: groove %s s must be 0 to %s s", groove, LONGEST);
        Require.that(isTime(plate), "labour: plate %s s must be 0 to %s s", plate, LONGEST);
        Require.that(watt > 0 && watt <= LONGEST, "labour: watt %s s must be over 0 and at most %s s", watt, LONGEST);
    }

    private static boolean isTime(double seconds) {
        return seconds >= 0 && seconds <= LONGEST;
    }
}
