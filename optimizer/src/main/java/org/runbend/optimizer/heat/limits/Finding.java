package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A number held against a limit.
 *
 * @param name what is held; it says which side of the limit is the good one (at least, at most)
 * @param value the number
 * @param limit the limit
 * @param unit of both
 * @param verdict what follows
 * @param source where the limit comes from
 */
public record Finding(String name, double value, double limit, String unit, Verdict verdict, String source) {
    /** What follows from a finding. */
    public enum Verdict {
        /** All is well. */
        OK,
        /** A person must look at it. */
        WARN,
        /** It must not be built so. */
        FAIL
    }

    /** Checks that both are numbers. */
    public Finding {
        Within.range(name, value, -1e9, 1e9, unit);
        Within.range("limit of " + name, limit, -1e9, 1e9, unit);
    }

    /** A value that should not be over its limit. */
    public static Finding atMost(String name, double value, double limit, String unit, Verdict over, String source) {
        return new Finding(name, value, limit, unit, value > limit ? over : Verdict.OK, source);
    }

    /** A value that should not be under its limit. */
    public static Finding atLeast(String name, double value, double limit, String unit, Verdict under, String source) {
        return new Finding(name, value, limit, unit, value < limit ? under : Verdict.OK, source);
    }
}
