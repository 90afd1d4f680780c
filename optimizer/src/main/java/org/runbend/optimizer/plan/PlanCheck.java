package org.runbend.optimizer.plan;

/**
 * One thing that was checked.
 *
 * @param name what
 * @param value what was found
 * @param limit what it was held against
 * @param unit of both
 * @param verdict what came of it
 * @param source where the limit comes from
 */
public record PlanCheck(String name, double value, double limit, String unit, Verdict verdict, String source) {
    /** Name of the check that says what share of the heated floor the loops serve. */
    public static final String SERVED = "share of heated floor served";

    /** What came of a check. */
    public enum Verdict {
        /** Within the limit. */
        OK,
        /** Worth a look. */
        WARN,
        /** Not to be built like this. */
        FAIL
    }
}
