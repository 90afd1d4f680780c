package org.runbend.optimizer.plates;

/**
 * A plate that the job names and the plan does not use.
 *
 * @param sku which
 * @param why why not
 * @param more for {@link Why#DEARER}: what the best plan found with it costs more, share of the plan's cost; else 0
 */
public record UnusedPlate(String sku, Why why, double more) {
    /** Why a plate is not used. */
    public enum Why {
        /** A narrower one is named. */
        WIDER,
        /** A groove of it costs no less than one of a single plate, or it leaves its neighbours no room. */
        NO_USE,
        /** No plan with it was found. */
        NONE_FOUND,
        /** The best plan with it costs as much and is no easier to cut. */
        NO_BETTER,
        /** The best plan with it costs more. */
        DEARER
    }
}
