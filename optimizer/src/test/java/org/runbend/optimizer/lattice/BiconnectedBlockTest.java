package org.runbend.optimizer.lattice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.jgrapht.alg.connectivity.BiconnectivityInspector;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.loop.search.EveryLoop;
import org.runbend.optimizer.loop.search.Lattices;

class BiconnectedBlockTest {
    @Test
    void twoSquaresSharingACornerAreTwoBlocks() {
        // South square 0 1 2 3, north-east square 3 4 5 6 by numbering from the south; node 3 is the cut.
        LatticeGraph graph = Lattices.picture(".oo\nooo\noo.");
        assertEquals(
                List.of(List.of(3, 4, 5, 6), List.of(0, 1, 2, 3)),
                BiconnectedBlock.all(graph).stream()
                        .map(BiconnectedBlock::nodes)
                        .sorted((a, b) -> b.get(0) - a.get(0))
                        .toList());
        assertEquals(40, BiconnectedBlock.ofLink(graph, 0, 1).orElseThrow().price(graph));
    }

    @Test
    void aBridgeHasNoBlock() {
        LatticeGraph graph = Lattices.picture("oo.oo\nooooo");
        assertTrue(BiconnectedBlock.ofLink(graph, 1, 2).isEmpty());
        assertEquals(2, BiconnectedBlock.all(graph).size());
    }

    /** Against the definition: two links are in one block if some simple cycle holds both. */
    @Test
    void raggedLatticesAgreeWithWalkingEveryLoop() {
        Random random = new Random(7);
        for (int i = 0; i < 60; i++) {
            LatticeGraph graph = Lattices.ragged(4, 4, random);
            for (PortPair link : Lattices.links(graph)) {
                List<Integer> walked =
                        EveryLoop.reachable(graph, link).stream().sorted().toList();
                assertEquals(
                        walked,
                        BiconnectedBlock.ofLink(graph, link.from(), link.to())
                                .map(BiconnectedBlock::nodes)
                                .orElse(List.of()));
            }
        }
    }

    /** Against JGraphT's BiconnectivityInspector, on floors as large as ours get; its blocks of one link are bridges. */
    @Test
    void largeLatticesAgreeWithAnIndependentLibrary() {
        Random random = new Random(14);
        int blocks = 0;
        for (int i = 0; i < 200; i++) {
            LatticeGraph graph =
                    Lattices.sparse(2 + random.nextInt(40), 2 + random.nextInt(30), random.nextInt(5) / 10.0, random);
            Set<List<Integer>> theirs = new BiconnectivityInspector<>(JGraphs.of(graph))
                    .getBlocks().stream()
                            .map(b -> b.vertexSet().stream().sorted().toList())
                            .filter(b -> b.size() > 2)
                            .collect(Collectors.toSet());
            List<List<Integer>> ours = BiconnectedBlock.all(graph).stream()
                    .map(BiconnectedBlock::nodes)
                    .toList();
            assertEquals(theirs, Set.copyOf(ours));
            assertEquals(theirs.size(), ours.size());
            blocks += ours.size();
        }
        assertTrue(blocks > 400, "blocks: " + blocks);
    }
}
