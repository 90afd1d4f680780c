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
