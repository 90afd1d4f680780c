package org.runbend.optimizer.plan;

import java.util.List;
import java.util.OptionalInt;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * What plates would cost if less were asked of them: cut to fewer lengths, or covering less.
 *
 * @param lengths by the number of different lengths, rising; the last one without a limit
 * @param coverages by the share of the plateable length, rising
 */
public record PlateOptions(List<ByLengths> lengths, List<ByCoverage> coverages) {
    /** Copies the lists. */
    public PlateOptions {
        lengths = List.copyOf(lengths);
        coverages = List.copyOf(coverages);
    }

    /**
     * Plates cut to few lengths.
     *
     * @param limit how many lengths are allowed; empty where any number is
     * @param plates the plan
     * @param work cutting them
     */
    public record ByLengths(OptionalInt limit, PlatePlan plates, SawWork work) {}

    /**
     * Plates that cover a share.
     *
     * @param asked share of the plateable length, 0 to 1
     * @param plates the plan
     */
    public record ByCoverage(double asked, PlatePlan plates) {}
}
