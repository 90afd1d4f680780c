package org.runbend.optimizer.heat.limits;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/** Finds the highest supply that keeps every limit. */
public final class HighestSupply {
    private static final double HOTTEST = 150;
    private static final double COLDEST = -80;

    /**
     * Which limit binds.
     *
     * @param celsius the highest supply, degrees C, rounded down to a tenth
     * @param name of the limit that it comes from
     */
    public record Answer(double celsius, String name) {
        /** What a mixing valve may be set to, whole degrees C: scales show no more. */
        public double setting() {
            return Math.floor(celsius);
        }
    }

    /** The highest supply, at most 150 degrees C; the limits hold their values at a supply in degrees C. */
    public Answer solve(List<SupplyLimit> limits, double supply) {
        Within.range("supply", supply, COLDEST, 200, "degrees C");
        Answer best = new Answer(HOTTEST, "none");
        for (SupplyLimit l : limits) {
            if (l.perKelvin() > 0) {
                double most = Math.max(COLDEST, supply + (l.limit() - l.value()) / l.perKelvin());
                if (most < best.celsius()) {
                    best = new Answer(most, l.name());
                }
            }
        }
        return new Answer(Down.tenth(best.celsius()), best.name());
    }
}
