package org.runbend.optimizer.loop;

import java.util.List;
import java.util.Objects;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * One loop to be laid: through exactly one of the port pairs, every other node optional at its price.
 *
 * @param graph nodes and links
 * @param ports the pairs to choose from; at least one, each linked
 * @param preference what decides between equals
 * @param limit how much work may be done
 */
public record LoopProblem(LatticeGraph graph, List<PortPair> ports, Preference preference, WorkLimit limit) {
    /** Checks the parts and copies the list. */
    public LoopProblem {
        Objects.requireNonNull(graph, "graph");
        Objects.requireNonNull(preference, "preference");
        Objects.requireNonNull(limit, "limit");
        ports = List.copyOf(ports);
        if (ports.isEmpty()) {
            throw new IllegalArgumentException("a loop needs at least one port pair");
        }
        for (PortPair port : ports) {
            if (Math.max(port.from(), port.to()) >= graph.size() || !graph.linked(port.from(), port.to())) {
                throw new IllegalArgumentException(
                        "port pair (" + port.from() + ", " + port.to() + ") is not a link of the graph");
            }
        }
    }
}
