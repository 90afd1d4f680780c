package org.runbend.optimizer.heat.output;

/** One side of a pipe as two fins in a row: the plate with half the cover, then the cover alone. */
final class PlateFin {
    private final double plated;
    private final double decay;
    private final double length;
    private final double beyond;
    private final double bareDecay;

    /** With what leaves up and down, W/(m2 K). */
    PlateFin(FinProblem problem, Side side, double loss) {
        double cover = problem.stack().sideways();
        double sheet = problem.plate().sideways() + cover / 2;
        plated = Math.sqrt(sheet * loss);
        decay = Math.sqrt(loss / sheet);
        length = (side.plate() - problem.pipe().outer() / 2) / 1000;
        double rest = (side.reach() - side.plate()) / 1000;
        // A floor without a cover carries nothing on beyond its plates.
        bareDecay = cover > 0 ? Math.sqrt(loss / cover) * rest : rest > 0 ? 50 : 0;
        beyond = Math.sqrt(cover * loss) * Math.tanh(bareDecay);
    }

    /** Heat into this side for each metre of pipe and degree of the plate at the pipe, W/(m K). */
    double admittance() {
        double t = Math.tanh(decay * length);
        return plated * (beyond + plated * t) / (plated + beyond * t);
    }

    /** Excess at the far end of the side against that at the pipe. */
    double far() {
        double x = Math.min(300, decay * length);
        double edge = 1 / (Math.cosh(x) + beyond / plated * Math.sinh(x));
        return edge / Math.cosh(Math.min(300, bareDecay));
    }
}
