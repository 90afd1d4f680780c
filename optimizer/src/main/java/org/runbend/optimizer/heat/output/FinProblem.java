package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A pipe in a spreader plate, and the floor that belongs to it.
 *
 * @param stack layers
 * @param pipe pipe
 * @param plate sheet
 * @param left one side
 * @param right the other side
 * @param contact between coolant and plate
 */
public record FinProblem(Stack stack, PipeWall pipe, Plate plate, Side left, Side right, Contact contact) {
    /** Checks that the plate holds the pipe. */
    public FinProblem {
        double radius = pipe.outer() / 2;
        Within.rule(
                left.plate() >= radius && right.plate() >= radius,
                "the plate reaches %.1f and %.1f mm from the pipe's axis: at least half the pipe, %.1f mm, is needed",
                left.plate(),
                right.plate(),
                radius);
    }

    /** Pipe after pipe at one spacing, each with its single-groove plate. */
    public static FinProblem even(
            Stack stack, PipeWall pipe, Plate plate, double plateWidth, double spacing, Contact contact) {
        Side side = Side.of(plateWidth, spacing);
        return new FinProblem(stack, pipe, plate, side, side, contact);
    }

    /** Width of floor that belongs to the pipe, mm. */
    public double pitch() {
        return left.reach() + right.reach();
    }
}
