package org.runbend.optimizer.heat.output;

/**
 * Heat of a pipe in a groove without a plate. Its crown touches the cover, air and foam lie round it, and the cover alone carries
 * heat sideways: a fin of the cover on a strip 1.7 pipes wide, behind a resistance of 2.36 m K/W and the pipe's wall; down also
 * straight through the foam round the pipe, 0.33 of the shape factor of a row of buried pipes (VDI Heat Atlas, E1, from memory).
 * Both fitted to two-dimensional models: nine finite-element cases upward within 3 %, own finite volumes downward within 20 %.
 */
public final class UnplatedGroove {
    private static final double CROWN = 2.36;
    private static final double COUPLED = 0.545;
    private static final double STRIP = 1.7;
    private static final double STRAIGHT_DOWN = 0.33;
    private static final double SHIELDED = 0.155;

    /** The conductances. */
    public StripOutput solve(GrooveProblem problem) {
        Stack stack = problem.stack();
        double outer = problem.pipe().outer();
        double up = stack.up();
        double down = stack.down(outer);
        double all = up + down;
        double pitch = problem.pitch() / 1000;
        double strip = Math.min(pitch, STRIP * outer / 1000);
        double cover = stack.sideways();
        double reach = cover > 0 ? Math.sqrt(all / cover) * (pitch - strip) / 2 : 0;
        double fins = 2 * Math.sqrt(cover * all) * Math.tanh(reach) + all * strip;
        double resistance = resistance(problem);
        double plane = Math.min(1, 1 / (pitch * (resistance + 1 / fins)) / all);
        double mean = Math.min(1, fins / (all * pitch));
        double straight = shape(problem) / pitch;
        return new StripOutput(
                plane * up,
                plane * down + STRAIGHT_DOWN * straight,
                Math.max(0, up * down / all * (1 - plane) - SHIELDED * straight),
                Math.max(1, 1 / mean),
                Math.min(1, 1 / Math.cosh(Math.min(300, reach)) / mean),
                plane);
    }

    /** From the coolant to the strip over the pipe, for a metre of it, m K/W. */
    private static double resistance(GrooveProblem problem) {
        PipeWall pipe = problem.pipe();
        return CROWN + problem.contact().film(pipe) + pipe.shape() / (COUPLED * 2 * Math.PI * pipe.conductivity());
    }

    /** Conductance of a metre of a row of pipes to a plane under it, W/(m K). */
    private static double shape(GrooveProblem problem) {
        Stack stack = problem.stack();
        double outer = problem.pipe().outer() / 1000;
        double pitch = problem.pitch() / 1000;
        double depth = stack.foam() / 1000 + outer / 2 + stack.outer() * stack.foamConductivity();
        double x = Math.min(300, 2 * Math.PI * depth / pitch);
        double log = Math.log(Math.max(2, 2 * pitch / (Math.PI * outer) * Math.sinh(x)));
        return 2 * Math.PI * stack.foamConductivity() / log;
    }
}
