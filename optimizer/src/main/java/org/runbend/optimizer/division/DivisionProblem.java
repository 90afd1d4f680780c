package org.runbend.optimizer.division;

import java.util.List;
import java.util.Objects;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;

/**
 * Several loops wanted on one lattice.
 *
 * @param graph nodes and links
 * @param ports pairs of neighbours between which pipe may come through, best place first
 * @param loops how many loops, 1 to 6
 * @param preference what decides between equal loops of a part
 * @param limit how much work a single part may take
 */
public record DivisionProblem(
        LatticeGraph graph, List<PortPair> ports, int loops, Preference preference, WorkLimit limit) {
    /** Checks the parts and copies the list. */
    public DivisionProblem {
        Objects.requireNonNull(graph, "graph");
        Objects.requireNonNull(preference, "preference");
        Objects.requireNonNull(limit, "limit");
        ports = List.copyOf(ports);
        if (loops < 1 || loops > 6) {
            throw new IllegalArgumentException("loops (" + loops + ") must be 1 to 6");
        }
    }
}
