package org.runbend.optimizer.heat.coolant;

/**
 * How much a filling grows from cold to hot, by the densities of Melinder 2010, and what must take it up: the headroom of an
 * open tank, or a vessel. The vessel by Boyle's law, V = Ve (pe + 1 bar) / (pe - p0) with the end pressure pe 90 % of the
 * relief valve's (EN 12828, from memory); headroom is what it grows by and half as much again (common practice).
 */
public final class ThermalExpansion {
    private static final double ATMOSPHERE = 101.325;
    private static final double END = 0.9;
    private static final double HEADROOM = 1.5;

    /** The growth and the room for it. */
    public ExpansionSolution solve(ExpansionProblem problem) {
        Melinder2010 properties = new Melinder2010();
        double cold = properties.at(problem.mixture(), problem.coldest()).density();
        double hot = properties.at(problem.mixture(), problem.hottest()).density();
        double litres = Math.max(0, problem.litres() * (cold / hot - 1));
        if (!problem.closed()) {
            return new ExpansionSolution(litres, cold, hot, HEADROOM * litres);
        }
        // Where 90 % of the valve's pressure lies under the filling's, half of what is between them is used.
        double end = Math.max(END * problem.relief(), (problem.fill() + problem.relief()) / 2);
        return new ExpansionSolution(litres, cold, hot, litres * (end + ATMOSPHERE) / (end - problem.fill()));
    }
}
