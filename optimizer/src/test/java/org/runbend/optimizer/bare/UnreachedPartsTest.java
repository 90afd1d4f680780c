package org.runbend.optimizer.bare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.DefaultEdge;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.JGraphs;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.search.Lattices;

/** What a loop cannot go to and back from, against the connected sets that JGraphT finds when the port's block is taken away. */
class UnreachedPartsTest {
    @Test
    void partsAgreeWithAnIndependentLibrary() {
        Random random = new Random(3);
        int joined = 0;
        int apart = 0;
        for (int i = 0; i < 200; i++) {
            LatticeGraph graph = Lattices.sparse(3 + random.nextInt(10), 3 + random.nextInt(8), 0.25, random);
            for (PortPair port : Lattices.links(graph).subList(0, 1)) {
                BiconnectedBlock block =
                        BiconnectedBlock.ofLink(graph, port.from(), port.to()).orElse(null);
                if (block == null) {
                    continue;
                }
                Lattice lattice =
                        new Lattice(new Point(0, 0), 0, 150, 75, graph, List.of(port), graph.size(), List.of());
                List<String> theirs = theirs(graph, block, port);
                List<String> ours = new UnreachedParts(lattice, block)
                        .find().stream()
                                .map(p -> p.reason() + " " + p.places())
                                .sorted()
                                .toList();
                assertEquals(theirs, ours);
                joined += (int)
                        ours.stream().filter(w -> w.startsWith("JOINED_BY_ONE")).count();
                apart += (int)
                        ours.stream().filter(w -> w.startsWith("NOT_JOINED")).count();
            }
        }
        assertTrue(joined > 50 && apart > 20, joined + " joined by one place, " + apart + " by none");
    }

    private static List<String> theirs(LatticeGraph graph, BiconnectedBlock block, PortPair port) {
        Graph<Integer, DefaultEdge> whole = JGraphs.of(graph);
        Set<Integer> reached = new ConnectivityInspector<>(whole).connectedSetOf(port.from());
        Graph<Integer, DefaultEdge> rest = JGraphs.of(graph);
        rest.removeAllVertices(block.nodes());
        List<String> parts = new ArrayList<>();
        for (Set<Integer> part : new ConnectivityInspector<>(rest).connectedSets()) {
            long heated = part.stream().filter(n -> graph.price(n) > 0).count();
            boolean hangsOn = reached.containsAll(part);
            if (heated > 0) {
                parts.add((hangsOn ? Reason.JOINED_BY_ONE : Reason.NOT_JOINED) + " " + heated);
            }
        }
        return parts.stream().sorted().toList();
    }
}
