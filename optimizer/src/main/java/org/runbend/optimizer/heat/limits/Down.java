package org.runbend.optimizer.heat.limits;

/** Rounds what may not be passed: never up, so that one limit is one number wherever it is told. */
final class Down {
    private static final double TENTHS = 10;
    /** What reckoning may lose of a number that is a tenth. */
    private static final double LOST = 1e-6;

    private Down() {}

    /** The tenth at or under a value. */
    static double tenth(double value) {
        return Math.floor(value * TENTHS + LOST) / TENTHS;
    }
}
