package org.runbend.optimizer.survey;

import java.util.List;

/**
 * An adjusted floor.
 *
 * @param places one for each corner in the order of the problem: the first at the origin, the second on the positive x axis
 * @param residuals one for each measurement in the order of the problem
 */
public record SurveySolution(List<Place> places, List<Residual> residuals) {
    /** Normalised residuals nearer to each other than this share cannot be told apart. */
    private static final double TIE = 1e-3;

    /** Copies the lists. */
    public SurveySolution {
        places = List.copyOf(places);
        residuals = List.copyOf(residuals);
    }

    /** Largest residual without its sign, mm. */
    public double worst() {
        return residuals.stream().mapToDouble(r -> Math.abs(r.value())).max().orElse(0);
    }

    /** Measurements less unknowns: how many could be left out. */
    public int redundancy() {
        return residuals.size() - (2 * places.size() - 3);
    }

    /**
     * The measurements whose leaving out would mend most: those of the largest normalised residual. More than one comes out where
     * the others cannot tell them apart; with one redundant measurement in all, that is each one it checks. Empty if
     * nothing is checked.
     */
    public List<Residual> suspects() {
        double most = residuals.stream().mapToDouble(Residual::normalised).max().orElse(0);
        return residuals.stream()
                .filter(r -> r.normalised() > 0 && r.normalised() >= most * (1 - TIE))
                .toList();
    }

    /** Sum of the squares of all residuals, mm2. */
    double squares() {
        return residuals.stream().mapToDouble(r -> r.value() * r.value()).sum();
    }
}
