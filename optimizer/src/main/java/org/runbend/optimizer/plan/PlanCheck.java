package org.runbend.optimizer.plan;

import org.runbend.optimizer.heat.limits.Finding.Side;

/**
 * One thing that was checked.
 *
 * @param name what
 * @param value what was found
 * @param good which side of the limit is the good one
 * @param limit what it was held against
 * @param unit of both
 * @param verdict what came of it
 * @param source where the limit comes from
 */
public record PlanCheck(
        String name, double value, Side good, double limit, String unit, Verdict verdict, String source) {
    /** What the check of how much plates cover is called. */
    public static final String PLATED = "plated share of plateable length";

    /** What rounding may add to a value that lies on its limit. */
    private static final double NOISE = 1e-9;

    /** What came of a check. */
    public enum Verdict {
        /** Within the limit. */
        OK,
        /** Worth a look. */
        WARN,
        /** Not to be built like this. */
        FAIL
    }

    /** A value that should not be under its limit; what follows if it is. */
    public static PlanCheck atLeast(
            String name, double value, double limit, String unit, Verdict under, String source) {
        Verdict verdict = value < limit - NOISE ? under : Verdict.OK;
        return new PlanCheck(name, value, Side.AT_LEAST, limit, unit, verdict, source);
    }

    /** A value that should not be over its limit; what follows if it is. */
    public static PlanCheck atMost(String name, double value, double limit, String unit, Verdict over, String source) {
        Verdict verdict = value > limit + NOISE ? over : Verdict.OK;
        return new PlanCheck(name, value, Side.AT_MOST, limit, unit, verdict, source);
    }

    /** How far the value lies on the good side of its limit, in its unit; negative on the other side. */
    public double room() {
        return good == Side.AT_LEAST ? value - limit : limit - value;
    }
}
