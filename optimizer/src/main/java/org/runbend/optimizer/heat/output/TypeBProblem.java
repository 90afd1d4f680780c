package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A floor of type B: pipe in the insulation, plates, cover; the plates touch each other.
 *
 * @param spacing m
 * @param pipe pipe
 * @param plate sheet
 * @param cover thickness over the plates, m
 * @param coverConductivity W/(m K)
 * @param finish resistance of the floor covering, m2 K/W
 * @param contact factor aK, 1 for good contact
 */
public record TypeBProblem(
        double spacing,
        PipeWall pipe,
        Plate plate,
        double cover,
        double coverConductivity,
        double finish,
        double contact) {
    /** Checks ranges; those of the tables are a matter of {@link TypeBSolution#valid()}. */
    public TypeBProblem {
        Within.range("spacing", spacing, 0.01, 2, "m");
        Within.range("cover", cover, 0, 0.2, "m");
        Within.range("conductivity of the cover", coverConductivity, 0.01, 500, "W/(m K)");
        Within.range("resistance of the finish", finish, 0, 5, "m2 K/W");
        Within.range("contact factor", contact, 0.1, 1, "");
    }
}
