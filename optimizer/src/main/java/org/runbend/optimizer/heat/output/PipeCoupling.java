package org.runbend.optimizer.heat.output;

/**
 * How a metre of pipe hangs on the floor over it: resistance from the coolant to the plate or cover, and what goes straight down
 * through the foam. The factors are fitted, see {@link HottelWhillierBliss} and {@link UnplatedGroove}.
 */
public final class PipeCoupling {
    /** Share of a pipe's girth that passes heat on. */
    private static final double COUPLED = 0.545;
    /** Crown of an unplated pipe to its cover, m K/W. */
    private static final double CROWN = 2.36;
    /** Width of the cover over an unplated pipe that is warmed from it, in pipes. */
    private static final double STRIP = 1.7;

    /** What goes straight down shields the room from outside by 0.155 of the shape factor, 0.47 of what goes down. */
    public static final double SHIELDED = 0.155 / 0.33;

    private static final double DOWN_BARE = 0.33;
    private static final double DOWN_PLATED = 0.126;

    private PipeCoupling() {}

    /** From coolant to plate, m K/W. */
    public static double inPlate(PipeWall pipe, Contact contact) {
        return wall(pipe) + contact.inPlate(pipe);
    }

    /** From coolant to the strip of cover over a pipe without a plate, m K/W. */
    public static double inGroove(PipeWall pipe, Contact contact) {
        return CROWN + contact.film(pipe) + wall(pipe);
    }

    /** Width of that strip, mm. */
    public static double strip(PipeWall pipe) {
        return STRIP * pipe.outer();
    }

    /** What goes straight down from a metre of pipe in a groove, W/(m K), with a width of floor beside it in mm. */
    public static double downFromGroove(Stack stack, PipeWall pipe, double pitch) {
        return DOWN_BARE * shape(stack, pipe, pitch);
    }

    /** The same of a pipe in a plate: a fit to the 12 % that go down more than a plane does. */
    public static double downFromPlate(Stack stack, PipeWall pipe, double pitch) {
        return DOWN_PLATED * shape(stack, pipe, pitch);
    }

    private static double wall(PipeWall pipe) {
        return pipe.shape() / (COUPLED * 2 * Math.PI * pipe.conductivity());
    }

    /** Conductance of a metre of a row of pipes to a plane under it, W/(m K): VDI Heat Atlas, E1, from memory. */
    private static double shape(Stack stack, PipeWall pipe, double pitch) {
        double outer = pipe.outer() / 1000;
        double between = pitch / 1000;
        double depth = stack.foam() / 1000 + outer / 2 + stack.outer() * stack.foamConductivity();
        double x = Math.min(300, 2 * Math.PI * depth / between);
        double log = Math.log(Math.max(2, 2 * between / (Math.PI * outer) * Math.sinh(x)));
        return 2 * Math.PI * stack.foamConductivity() / log;
    }
}
