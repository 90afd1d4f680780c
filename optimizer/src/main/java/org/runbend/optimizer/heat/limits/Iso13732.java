package org.runbend.optimizer.heat.limits;

/**
 * Temperature of a touched surface of any material under which skin is not burnt: ISO 13732-1, from memory: 51 degrees C for a minute,
 * 48 for ten, 43 for eight hours and more; not for more than a tenth of the body. Between them straight over the logarithm of time.
 */
public final class Iso13732 {
    private static final double[] MINUTES = {1, 10, 480};
    private static final double[] CELSIUS = {51, 48, 43};

    /** Threshold in degrees C for a contact of so many minutes; under a minute that of a minute. */
    public double threshold(double minutes) {
        if (!(minutes > MINUTES[0])) {
            return CELSIUS[0];
        }
        for (int i = 1; i < MINUTES.length; i++) {
            if (minutes <= MINUTES[i]) {
                double share = Math.log(minutes / MINUTES[i - 1]) / Math.log(MINUTES[i] / MINUTES[i - 1]);
                return CELSIUS[i - 1] + share * (CELSIUS[i] - CELSIUS[i - 1]);
            }
        }
        return CELSIUS[CELSIUS.length - 1];
    }
}
