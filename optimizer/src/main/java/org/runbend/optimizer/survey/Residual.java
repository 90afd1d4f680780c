package org.runbend.optimizer.survey;

/**
 * How a measurement fits the adjusted floor.
 *
 * @param measurement the measurement
 * @param value measured less adjusted length, mm
 * @param redundancy share of an error of this measurement that shows in its own residual: 0 if no other measurement
 *     checks it, towards 1 if the others fix it fully. The shares of all measurements add up to measurements less unknowns.
 */
public record Residual(Measurement measurement, double value, double redundancy) {
    /** Below this the other measurements say next to nothing about this one. */
    static final double UNCHECKED = 0.02;

    /** Whether other measurements check this one. */
    public boolean isChecked() {
        return redundancy > UNCHECKED;
    }

    /**
     * Size of the residual in units of its own spread, for measurements of unit spread: |v| / sqrt(r) (Baarda's data
     * snooping). Its square is what the sum of squares loses when the measurement is left out. 0 if nothing checks it.
     */
    public double normalised() {
        return isChecked() ? Math.abs(value) / Math.sqrt(redundancy) : 0;
    }

    /** Measured length less what the other measurements alone say, mm, to first order: v / r. 0 if nothing checks it. */
    public double discrepancy() {
        return isChecked() ? value / redundancy : 0;
    }
}
