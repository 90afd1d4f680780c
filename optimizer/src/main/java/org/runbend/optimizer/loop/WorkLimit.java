package org.runbend.optimizer.loop;

/**
 * How much a solver may do, counted in states so that the answer is the same on any machine.
 *
 * @param statesPerLayer most states kept after any one node; at least 1
 * @param totalStates most states expanded in all; at least 1
 */
public record WorkLimit(long statesPerLayer, long totalStates) {
    /** Checks the counts. */
    public WorkLimit {
        if (statesPerLayer < 1 || totalStates < 1) {
            throw new IllegalArgumentException(
                    "work limits (" + statesPerLayer + ", " + totalStates + ") must be at least 1");
        }
    }

    /** Enough for 250 nodes at a frontier of 15 links; a few hundred MB and a few seconds at worst. */
    public static WorkLimit standard() {
        return new WorkLimit(2_000_000, 60_000_000);
    }
}
