package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Side;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Pipe of a loop that lies alike.
 *
 * @param kind plated, groove or bend
 * @param length of pipe, mm
 * @param plate the plate it lies in, if any
 * @param left one side
 * @param right the other side
 * @param name part number of the plate; empty where there is none, or where nobody says which
 */
public record PipeStrip(FloorZone.Kind kind, double length, Optional<Plate> plate, Side left, Side right, String name) {
    /** Checks the length. */
    public PipeStrip {
        Within.range("length of " + kind.words(), length, 0, 1e7, "mm");
        Within.rule(
                plate.isPresent() == (kind == FloorZone.Kind.PLATED),
                "pipe in a plate needs its plate, other pipe has none");
    }

    /** Pipe whose plate, if it has one, needs no name. */
    public PipeStrip(FloorZone.Kind kind, double length, Optional<Plate> plate, Side left, Side right) {
        this(kind, length, plate, left, right, "");
    }

    /** Pipe without a plate, with a width of floor in mm. */
    public static PipeStrip bare(FloorZone.Kind kind, double length, double pitch) {
        Side side = new Side(0, pitch / 2);
        return new PipeStrip(kind, length, Optional.empty(), side, side);
    }

    /** Width of floor that belongs to it, mm. */
    public double pitch() {
        return left.reach() + right.reach();
    }

    /** Area that belongs to it, m2. */
    public double area() {
        return length * pitch() * 1e-6;
    }
}
