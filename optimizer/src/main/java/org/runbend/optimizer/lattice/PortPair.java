package org.runbend.optimizer.lattice;

/**
 * Two linked nodes between which the pipe comes through the floor. The pipe is laid from {@code from} to {@code to} the
 * long way round; the link between them closes the loop and is not laid.
 *
 * @param from node where the flow arrives
 * @param to node where the return leaves
 * @param rank place in the order of preference, lower is better; at least 0
 */
public record PortPair(int from, int to, int rank) {
    /** Checks that the ends differ and the rank is not negative. */
    public PortPair {
        if (from == to || from < 0 || to < 0) {
            throw new IllegalArgumentException("port pair (" + from + ", " + to + ") must name two nodes");
        }
        if (rank < 0) {
            throw new IllegalArgumentException("rank (" + rank + ") of a port pair must not be negative");
        }
    }
}
