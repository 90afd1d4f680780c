package org.runbend.optimizer.survey;

import java.util.List;

/**
 * A floor to be made of lengths.
 *
 * @param corners names of the corners in order round the floor, three or more
 * @param measurements sides and diagonals in any order; a length may be taken twice
 * @param clockwise whether the corners are listed clockwise as seen from above
 */
public record SurveyProblem(List<String> corners, List<Measurement> measurements, boolean clockwise) {
    /** Copies the lists; refuses fewer than three corners and a measurement of a corner that is not there. */
    public SurveyProblem {
        corners = List.copyOf(corners);
        measurements = List.copyOf(measurements);
        if (corners.size() < 3) {
            throw new IllegalArgumentException("a floor has at least 3 corners");
        }
        int n = corners.size();
        if (measurements.stream().anyMatch(m -> m.from() >= n || m.to() >= n)) {
            throw new IllegalArgumentException("a measurement names a corner that is not there");
        }
    }

    /** Number of coordinates to be found once the first corner and the direction of the first side are fixed: 2 n - 3. */
    int unknowns() {
        return 2 * corners.size() - 3;
    }
}
