package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A number held against a limit.
 *
 * @param name what is held
 * @param value the number
 * @param side which side of the limit is the good one
 * @param limit the limit
 * @param unit of both
 * @param verdict what follows
 * @param source where the limit comes from
 */
public record Finding(String name, double value, Side side, double limit, String unit, Verdict verdict, String source) {
    /** What the finding on bare tails is called. */
    public static final String BARE_TAILS = "bare tails and fittings in reach at most";

    /** The good side of a limit, the limit included. */
    public enum Side {
        /** The limit and what is over it. */
        AT_LEAST,
        /** The limit and what is under it. */
        AT_MOST
    }

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
        return new Finding(name, value, Side.AT_MOST, limit, unit, value > limit ? over : Verdict.OK, source);
    }

    /** A value that should not be under its limit. */
    public static Finding atLeast(String name, double value, double limit, String unit, Verdict under, String source) {
        return new Finding(name, value, Side.AT_LEAST, limit, unit, value < limit ? under : Verdict.OK, source);
    }
}
