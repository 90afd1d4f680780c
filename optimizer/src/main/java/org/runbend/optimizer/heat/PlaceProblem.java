package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * One place of the lattice: a square of floor as wide as the spacing, with pipe through it or not.
 *
 * @param build what the floor is made of
 * @param plated pipe in the plate that is used; none if there are no plates
 * @param spacing centre to centre of neighbouring runs, mm
 * @param radius radius at which corners are laid, mm
 * @param coverage share of the straight pipe that lies in plates, 0 to 1
 * @param clearance straight pipe beside a bend that takes no plate, mm
 * @param coolant mean temperature in the pipe, degrees C
 * @param room degrees C
 * @param outside degrees C
 */
public record PlaceProblem(
        FloorBuild build,
        Optional<PipeStrip> plated,
        double spacing,
        double radius,
        double coverage,
        double clearance,
        double coolant,
        double room,
        double outside) {
    /** Checks ranges. */
    public PlaceProblem {
        Within.range("spacing", spacing, 10, 1000, "mm");
        Within.range("radius of corners", radius, 0, 2 * spacing, "mm");
        Within.range("coverage", coverage, 0, 1, "");
        Within.range("clearance beside a bend", clearance, 0, 10_000, "mm");
    }
}
