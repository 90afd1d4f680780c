package org.runbend.optimizer.day;

/**
 * A cut that an order needs.
 *
 * @param order its number
 * @param goesTo its place in the kit
 * @param length hundredths of mm, positive
 */
public record DayCut(String order, String goesTo, long length) {
    /** Refuses a length that is not positive. */
    public DayCut {
        if (length <= 0) {
            throw new IllegalArgumentException("a cut of " + order + " has no length");
        }
    }
}
