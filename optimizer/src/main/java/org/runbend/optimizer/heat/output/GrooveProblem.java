package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A pipe in a groove of the foam, without a plate: a straight, or a bend.
 *
 * @param stack layers
 * @param pipe pipe
 * @param pitch width of floor that belongs to the pipe, mm
 * @param contact of which the film counts; a gap to a plate there is none
 */
public record GrooveProblem(Stack stack, PipeWall pipe, double pitch, Contact contact) {
    /** Checks that the pipe has room. */
    public GrooveProblem {
        Within.range("width of floor beside a pipe", pitch, pipe.outer(), 10_000, "mm");
    }
}
