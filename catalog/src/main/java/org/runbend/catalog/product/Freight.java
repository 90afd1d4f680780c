package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What sending a kit costs, by its weight.
 *
 * @param steps lightest first; none: freight is not priced
 * @param freeFrom net sum of the goods, discount taken off, from which sending is free, minor units; empty: never
 */
public record Freight(List<Step> steps, OptionalLong freeFrom) {
    /** Freight that nobody priced. */
    public static final Freight NONE = new Freight(List.of(), OptionalLong.empty());

    /** Sorts the steps and checks that no weight stands twice. */
    public Freight {
        steps = steps.stream().sorted(Comparator.comparingDouble(Step::upTo)).toList();
        Require.that(
                steps.stream().map(Step::upTo).distinct().count() == steps.size(),
                "two steps of freight end at the same weight");
    }

    /** The step that a weight falls into, kg; empty if it is over the heaviest. */
    public Optional<Step> stepFor(double kilograms) {
        return steps.stream().filter(s -> kilograms <= s.upTo).findFirst();
    }

    /** Whether sending goods of a net sum is free, minor units. */
    public boolean isFreeFor(long net) {
        return freeFrom.isPresent() && net >= freeFrom.getAsLong();
    }

    /**
     * A step.
     *
     * @param upTo heaviest weight, kg
     * @param price minor units
     */
    public record Step(double upTo, long price) {
        /** Checks the weight. */
        public Step {
            Require.that(upTo > 0 && upTo <= 10_000, "freight upTo %s kg must be over 0 and at most 10000", upTo);
        }
    }
}
