package org.runbend.optimizer.heat.limits;

/** Share of people who are displeased with a floor's temperature: ISO 7730, from memory, 5 to 100 %. */
public final class Iso7730 {
    /** Share, 0 to 1, for a floor of so many degrees C. */
    public double displeased(double floor) {
        double percent = 100 - 94 * Math.exp(-1.387 + 0.118 * floor - 0.0025 * floor * floor);
        return Math.max(0, Math.min(100, percent)) / 100;
    }
}
