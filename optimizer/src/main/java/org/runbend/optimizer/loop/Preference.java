package org.runbend.optimizer.loop;

import java.util.Objects;
import org.runbend.optimizer.lattice.Axis;

/**
 * What decides between loops of equal objective.
 *
 * @param axis the axis along which runs are wanted
 * @param evenHeat whether flow should lie beside return
 * @param bendClearanceInSpacings length of a run next to a bend that takes no plate, as a multiple of the spacing; at
 *     least 0
 */
public record Preference(Axis axis, boolean evenHeat, double bendClearanceInSpacings) {
    /** Checks the parts. */
    public Preference {
        Objects.requireNonNull(axis, "axis");
        if (!(bendClearanceInSpacings >= 0 && bendClearanceInSpacings < 1000)) {
            throw new IllegalArgumentException(
                    "bendClearanceInSpacings (" + bendClearanceInSpacings + ") must be at least 0 and below 1000");
        }
    }

    /** Long runs in any direction, bend clearance two thirds of the spacing (100 mm at 150 mm). */
    public static Preference longRuns() {
        return new Preference(Axis.NONE, false, 2.0 / 3.0);
    }
}
