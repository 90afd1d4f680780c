package org.runbend.optimizer.cutting;

import java.util.Objects;

/**
 * A proved lower bound: no plan is below it.
 *
 * @param value in the unit of what is bounded
 * @param proof the argument
 */
public record Bound(long value, Proof proof) {
    /** Refuses a missing proof. */
    public Bound {
        Objects.requireNonNull(proof, "proof");
    }

    /** The higher of two bounds; the first when they are equal. */
    public Bound max(Bound other) {
        return other.value > value ? other : this;
    }

    /** How a bound was proved, weakest assumption first. */
    public enum Proof {
        /** The material alone: total length wanted against the stock lengths on offer, in integers. */
        MATERIAL,
        /** A dual feasible function or closed formula, in integers. */
        DUAL_FEASIBLE,
        /** A linear program over all patterns, its duals made feasible in integers. */
        PATTERN_LP,
        /** An exhaustive search or dynamic program, in integers. */
        EXHAUSTIVE,
        /** An integer program; rests on the solver's tolerance (1e-6). */
        INTEGER_PROGRAM;

        /** The argument as papers and data files name it. */
        public String words() {
            if (this == MATERIAL) {
                return "material";
            }
            return this == INTEGER_PROGRAM ? "integer program" : "exact integer bound";
        }
    }
}
