package org.runbend.optimizer.heat.need;

/**
 * Condensation on the metal under a floor after the idea of EN ISO 13788: saturation pressure of its annex E (constants from memory),
 * dew point of the room's air against the metal. It says what happens where air gets there; how much vapour gets through foam,
 * tape and gaps it does not say.
 */
public final class Iso13788 {
    private static final double BASE = 610.5;

    /** Temperature, dew point and verdict. */
    public DampSolution solve(DampProblem problem) {
        double metal = problem.outside() + problem.flux() * problem.outer();
        double dew = dewPoint(problem.humidity() * saturation(problem.room()));
        return new DampSolution(metal, dew, metal < dew);
    }

    /** Saturation pressure, Pa. */
    private static double saturation(double celsius) {
        return celsius >= 0
                ? BASE * Math.exp(17.269 * celsius / (237.3 + celsius))
                : BASE * Math.exp(21.875 * celsius / (265.5 + celsius));
    }

    private static double dewPoint(double pressure) {
        double log = Math.log(pressure / BASE);
        return pressure >= BASE ? 237.3 * log / (17.269 - log) : 265.5 * log / (21.875 - log);
    }
}
