package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.NoSuchElementException;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/** Reads a loop out of the legs of all steps. */
final class CycleTrace {
    private final LatticeGraph graph;
    private final int[] legsOfNode;
    private int turns;
    private int leftOut;

    CycleTrace(LatticeGraph graph, Frontier frontier, int[] legs) {
        this.graph = graph;
        this.legsOfNode = new int[graph.size()];
        for (int t = 0; t < legs.length; t++) {
            legsOfNode[frontier.node(t)] = legs[t];
            turns += Frontier.isCorner(legs[t]) ? 1 : 0;
            leftOut += legs[t] == 0 && frontier.price(t) > 0 ? 1 : 0;
        }
    }

    int turns() {
        return turns;
    }

    int leftOut() {
        return leftOut;
    }

    /** The pair of lowest rank whose link is on the loop and which excuses every forbidden corner of it. */
    PortPair bestPort(List<PortPair> ports) {
        List<Integer> forbidden = forbiddenCorners();
        return ports.stream()
                .filter(port -> uses(port.from(), port.to()))
                .filter(port -> forbidden.stream().allMatch(node -> node == port.from() || node == port.to()))
                .filter(port -> StiffRule.fits(graph, cycle(port)))
                .min(Comparator.comparingInt(PortPair::rank))
                .orElseThrow(() -> new NoSuchElementException("the loop misses every port pair"));
    }

    private List<Integer> forbiddenCorners() {
        List<Integer> nodes = new ArrayList<>();
        for (Heading heading : Heading.values()) {
            int corner = 1 << heading.index() | 1 << heading.left().index();
            for (int node = 0; node < legsOfNode.length; node++) {
                if (legsOfNode[node] == corner && !graph.bendAllowed(node, heading, heading.left())) {
                    nodes.add(node);
                }
            }
        }
        return nodes;
    }

    private boolean uses(int a, int b) {
        return (legsOfNode[a] >> graph.headingTo(a, b).index() & 1) == 1;
    }

    /** Nodes in the order of laying. */
    List<Integer> cycle(PortPair port) {
        List<Integer> cycle = new ArrayList<>();
        int back = graph.headingTo(port.to(), port.from()).index();
        int node = port.to();
        do {
            cycle.add(node);
            int out = Integer.numberOfTrailingZeros(legsOfNode[node] & ~(1 << back));
            node = graph.neighbour(node, Heading.ofIndex(out));
            back = out ^ 2;
        } while (node != port.to());
        Collections.reverse(cycle);
        return cycle;
    }
}
