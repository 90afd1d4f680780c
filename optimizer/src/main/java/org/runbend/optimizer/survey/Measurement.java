package org.runbend.optimizer.survey;

/**
 * A length taken between two corners.
 *
 * @param from index of a corner
 * @param to index of another corner
 * @param length mm, over 0
 */
public record Measurement(int from, int to, double length) {
    /** Refuses a length from a corner to itself, and one that is none. */
    public Measurement {
        if (from == to || from < 0 || to < 0) {
            throw new IllegalArgumentException("a length leads from one corner to another one");
        }
        if (!(length > 0) || !Double.isFinite(length)) {
            throw new IllegalArgumentException("a length must be over 0 mm");
        }
    }
}
