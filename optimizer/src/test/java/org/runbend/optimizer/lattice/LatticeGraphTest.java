package org.runbend.optimizer.lattice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What holds for a lattice holds for its copies and parts. */
class LatticeGraphTest {
    /**
     * <pre>
     * 3-4-5   node 1 costs nothing, node 4 must be passed, at node 0 no bend from east to north,
     * 0-1-2   a return bend over 1-2 to the north; the pipe is stiff
     * </pre>
     */
    private static LatticeGraph.Builder whole() {
        LatticeGraph.Builder graph = LatticeGraph.builder();
        for (int i = 0; i < 6; i++) {
            graph.addNode(i % 3, i / 3, i == 1 ? 0 : 10);
        }
        graph.link(0, 1).link(1, 2).link(3, 4).link(4, 5).link(0, 3).link(1, 4).link(2, 5);
        return graph.forbidBend(0, Heading.EAST, Heading.NORTH)
                .want(4)
                .allowReturn(1, Heading.EAST, Heading.NORTH)
                .stiff();
    }

    @Test
    void aCopyIsTheSame() {
        LatticeGraph copy = whole().build().copy().build();
        assertEquals(6, copy.size());
        assertFalse(copy.bendAllowed(0, Heading.EAST, Heading.NORTH));
        assertTrue(copy.bendAllowed(0, Heading.NORTH, Heading.WEST));
        assertTrue(copy.isWanted(4) && !copy.isWanted(3) && copy.isStiff());
        assertTrue(copy.returnAllowed(1, Heading.EAST, Heading.NORTH));
        assertTrue(copy.returnAllowed(2, Heading.WEST, Heading.NORTH));
        assertFalse(copy.returnAllowed(1, Heading.EAST, Heading.SOUTH));
        assertEquals(1, copy.neighbour(0, Heading.EAST));
        assertEquals(-1, copy.neighbour(0, Heading.SOUTH));
    }

    /** Without the column of 0 and 3 node 1 is the first, and its link to the west is gone. */
    @Test
    void aPartKeepsWhatLiesWithin() {
        LatticeGraph part = whole().build().part(new int[] {1, 2, 4, 5});
        assertEquals(4, part.size());
        assertEquals(0, part.price(0));
        assertEquals(10, part.price(1));
        assertEquals(1, part.column(0));
        assertEquals(-1, part.neighbour(0, Heading.WEST));
        assertEquals(2, part.neighbour(0, Heading.NORTH));
        assertTrue(part.isWanted(2) && part.isStiff());
        assertTrue(part.returnAllowed(0, Heading.EAST, Heading.NORTH));
    }

    @Test
    void anotherPriceIsForNodesThatHaveOne() {
        LatticeGraph dear = whole().price(99).build();
        assertEquals(0, dear.price(1));
        assertEquals(99, dear.price(2));
        assertThrows(IllegalArgumentException.class, () -> whole().price(1_000_001));
    }
}
