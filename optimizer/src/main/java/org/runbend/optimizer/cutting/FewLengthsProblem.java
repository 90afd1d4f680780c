package org.runbend.optimizer.cutting;

import java.util.List;

/**
 * Stretches to be covered by pieces of few different lengths.
 *
 * @param cover what to cover, and from which stock
 * @param given lengths that are in use already and may be used again, hundredths of mm; they count
 * @param most greatest number of different lengths, those given included; 1 or more
 */
public record FewLengthsProblem(CoverProblem cover, List<Long> given, int most) {
    /** Copies the list and refuses more lengths given than allowed, and such as no piece has. */
    public FewLengthsProblem {
        given = given.stream().distinct().sorted().toList();
        Require.that(most >= 1, "most (%d) must be 1 or more", most);
        Require.that(given.size() <= most, "%d lengths are given, %d are allowed", given.size(), most);
    }
}
